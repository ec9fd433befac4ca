// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/base/parallel.h"

#include <atomic>
#include <catch2/catch.hpp>
#include <mutex>
#include <set>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include "staddle/base/random.h"

namespace staddle {
namespace {

// Sums that differ in the last bits when their order changes.
std::vector<double> sums(unsigned threads) {
  std::vector<double> result(37);
  const bool done = for_each_chunk(result.size(), threads, [&](std::size_t chunk) {
    RandomStream stream(5, chunk);
    for (int i = 0; i < 1000; ++i) result[chunk] += stream.next_uniform() / (1 + i);
  });
  CHECK(done);
  return result;
}

TEST_CASE("the result is the same to the last bit with any number of threads") {
  const std::vector<double> alone = sums(1);
  CHECK(alone.front() > 0.0);
  for (const unsigned threads : {0u, 2u, 3u, 8u, 100u}) CHECK(sums(threads) == alone);
}

TEST_CASE("each chunk is done exactly once") {
  for (const unsigned threads : {1u, 4u}) {
    std::vector<std::atomic<int>> visits(1000);
    CHECK(for_each_chunk(visits.size(), threads, [&](std::size_t chunk) { ++visits[chunk]; }));
    for (const auto& count : visits) CHECK(count == 1);
  }
}

TEST_CASE("without chunks all are done") {
  CHECK(for_each_chunk(0, 4, [](std::size_t) { FAIL("there is no chunk to do"); }));
}

TEST_CASE("one thread means the thread that calls") {
  std::set<std::thread::id> ids;
  for_each_chunk(20, 1, [&](std::size_t) { ids.insert(std::this_thread::get_id()); });
  CHECK(ids == std::set<std::thread::id>{std::this_thread::get_id()});
}

TEST_CASE("no more threads work than were allowed") {
  std::mutex mutex;
  std::set<std::thread::id> ids;
  for_each_chunk(200, 3, [&](std::size_t) {
    const std::lock_guard lock(mutex);
    ids.insert(std::this_thread::get_id());
  });
  CHECK(ids.size() <= 3);
}

TEST_CASE("of several exceptions the one of the lowest chunk comes out") {
  for (const unsigned threads : {1u, 2u, 8u}) {
    std::atomic<int> done{0};
    std::string caught;
    try {
      for_each_chunk(50, threads, [&](std::size_t chunk) {
        if (chunk % 10 == 7) throw std::runtime_error("chunk " + std::to_string(chunk));
        ++done;
      });
    } catch (const std::runtime_error& error) {
      caught = error.what();
    }
    CHECK(caught == "chunk 7");
    CHECK(done == 45);  // a failure does not keep the others from being done
  }
}

TEST_CASE("after a stop request no chunk is begun") {
  std::stop_source source;
  source.request_stop();
  CHECK_FALSE(for_each_chunk(
      5, 2, [](std::size_t) { FAIL("no chunk may begin"); }, source.get_token()));
}

TEST_CASE("a stop request on the way leaves the rest undone and says so") {
  std::stop_source source;
  std::vector<std::size_t> done;
  const bool all = for_each_chunk(
      10, 1,
      [&](std::size_t chunk) {
        done.push_back(chunk);
        if (chunk == 3) source.request_stop();
      },
      source.get_token());
  CHECK_FALSE(all);
  CHECK(done == std::vector<std::size_t>{0, 1, 2, 3});
}

TEST_CASE("a stop request in the last chunk comes too late to leave anything undone") {
  std::stop_source source;
  CHECK(for_each_chunk(
      4, 1,
      [&](std::size_t chunk) {
        if (chunk == 3) source.request_stop();
      },
      source.get_token()));
}

}  // namespace
}  // namespace staddle

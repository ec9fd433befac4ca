// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <variant>

#include "staddle/base/contract.h"
#include "staddle/base/error.h"

namespace staddle {

// A value, or all the faults that kept it from being made. The member names are
// those of std::expected, which this compiler does not have yet.
template <class Value, class Error = Faults>
class [[nodiscard]] Result {
 public:
  Result(Value value) : content_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : content_(std::in_place_index<1>, std::move(error)) {}

  bool has_value() const { return content_.index() == 0; }
  explicit operator bool() const { return has_value(); }

  // REQUIRES: has_value().
  const Value& value() const& {
    require(has_value(), "Result::value needs a result that holds a value");
    return std::get<0>(content_);
  }
  Value& value() & {
    require(has_value(), "Result::value needs a result that holds a value");
    return std::get<0>(content_);
  }
  Value&& value() && {
    require(has_value(), "Result::value needs a result that holds a value");
    return std::get<0>(std::move(content_));
  }
  const Value& operator*() const& { return value(); }
  Value& operator*() & { return value(); }
  const Value* operator->() const { return &value(); }

  // REQUIRES: !has_value().
  const Error& error() const& {
    require(!has_value(), "Result::error needs a result that holds an error");
    return std::get<1>(content_);
  }

 private:
  std::variant<Value, Error> content_;
};

}  // namespace staddle

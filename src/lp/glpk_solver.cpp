// SPDX-License-Identifier: GPL-3.0-or-later
#include <glpk.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <exception>
#include <utility>

#include "lp/glpk_model.h"
#include "staddle/base/contract.h"
#include "staddle/base/tolerance.h"

namespace staddle::lp {
namespace {

// ---- The environment of a thread ----

// Thrown out of GLPK by its error hook, which would otherwise end the program.
struct GlpkError {};

// Which environment the thread has; every one has a number of its own, 0 is none. Kept
// apart from Environment so that it can be read after that has gone.
thread_local std::uint64_t current_environment = 0;

class Environment {
 public:
  Environment() { set_up(); }
  ~Environment() { tear_down(); }
  Environment(const Environment&) = delete;
  Environment& operator=(const Environment&) = delete;

  // After an error GLPK's state is undefined: it starts afresh, without its problems.
  std::string recover() {
    std::string words = std::exchange(said_, "");
    std::replace(words.begin(), words.end(), '\n', ' ');
    tear_down();
    set_up();
    return "error inside GLPK: " + words;
  }

 private:
  void set_up() {
    static std::atomic<std::uint64_t> environments_made{0};
    glp_term_out(GLP_OFF);
    glp_term_hook(&listen, this);
    glp_error_hook(&fail, this);
    current_environment = ++environments_made;
  }
  void tear_down() {
    current_environment = 0;
    glp_free_env();
  }
  // GLPK turns its terminal on to report an error; returning 1 keeps it silent.
  static int listen(void* environment, const char* text) {
    static_cast<Environment*>(environment)->said_ += text;
    return 1;
  }
  static void fail(void*) { throw GlpkError(); }

  std::string said_;
};

Environment& environment() {
  thread_local Environment of_this_thread;
  return of_this_thread;
}

// ---- From our words to GLPK's ----

int glpk_index(std::size_t index) { return static_cast<int>(index) + 1; }

int bound_type(double lower, double upper) {
  if (lower == upper) return GLP_FX;
  if (std::isfinite(lower)) return std::isfinite(upper) ? GLP_DB : GLP_LO;
  return std::isfinite(upper) ? GLP_UP : GLP_FR;
}

double or_zero(double bound) { return std::isfinite(bound) ? bound : 0.0; }

void put_column(glp_prob* problem, std::size_t index, const Column& column) {
  const int j = glpk_index(index);
  double lower = column.lower;
  double upper = column.upper;
  if (column.whole) {  // GLPK wants whole bounds then
    lower = std::ceil(lower - tolerance::limit_slack);
    upper = std::floor(upper + tolerance::limit_slack);
  }
  glp_set_col_kind(problem, j, column.whole ? GLP_IV : GLP_CV);
  glp_set_obj_coef(problem, j, column.cost);
  glp_set_col_bnds(problem, j, bound_type(lower, upper), or_zero(lower), or_zero(upper));
}

void put_row(glp_prob* problem, std::size_t index, const Row& row) {
  glp_set_row_bnds(problem, glpk_index(index), bound_type(row.lower, row.upper), or_zero(row.lower),
                   or_zero(row.upper));
}

// GLPK counts from 1.
struct Terms {
  std::vector<int> indexes = {0};
  std::vector<double> values = {0.0};

  explicit Terms(const std::vector<Term>& terms) {
    for (const Term& term : terms) {
      indexes.push_back(glpk_index(term.index));
      values.push_back(term.value);
    }
  }
  int count() const { return static_cast<int>(indexes.size()) - 1; }
};

void load(glp_prob* problem, const LinearProgram& program) {
  glp_set_obj_dir(problem, program.direction == Direction::minimise ? GLP_MIN : GLP_MAX);
  glp_set_obj_coef(problem, 0, program.constant);
  if (!program.rows.empty()) glp_add_rows(problem, static_cast<int>(program.rows.size()));
  if (!program.columns.empty()) glp_add_cols(problem, static_cast<int>(program.columns.size()));
  for (std::size_t i = 0; i < program.rows.size(); ++i) put_row(problem, i, program.rows[i]);
  for (std::size_t j = 0; j < program.columns.size(); ++j) {
    put_column(problem, j, program.columns[j]);
  }
  std::vector<int> rows = {0};
  std::vector<int> columns = {0};
  std::vector<double> values = {0.0};
  for (const Entry& entry : program.entries) {
    rows.push_back(glpk_index(entry.row));
    columns.push_back(glpk_index(entry.column));
    values.push_back(entry.value);
  }
  glp_load_matrix(problem, static_cast<int>(program.entries.size()), rows.data(), columns.data(),
                  values.data());
  glp_scale_prob(problem, GLP_SF_AUTO);
}

// The factor, a power of 2, that brings the terms of a new row or column, scaled the
// other way already, around 1. To scale the whole program anew takes longer than to
// solve it from where it stands.
double scale_of(const Terms& terms, const std::function<double(int)>& scale_of_index) {
  double least = infinity;
  double greatest = 0.0;
  for (std::size_t k = 1; k < terms.values.size(); ++k) {
    const double value = std::fabs(terms.values[k] * scale_of_index(terms.indexes[k]));
    if (value == 0.0) continue;
    least = std::min(least, value);
    greatest = std::max(greatest, value);
  }
  if (greatest == 0.0) return 1.0;
  const double power = std::round(-0.5 * (std::log2(least) + std::log2(greatest)));
  return std::exp2(std::clamp(power, -30.0, 30.0));
}

// ---- One solve ----

struct Outcome {
  Status status = Status::numerical_trouble;
  std::string message;
};

class Run {
 public:
  Run(glp_prob* problem, const Options& options, double tolerance)
      : problem_(problem),
        options_(options),
        tolerance_(tolerance),
        iterations_at_start_(glp_get_it_cnt(problem)),
        start_(std::chrono::steady_clock::now()) {}

  GlpkAnswer solve(const LinearProgram& program) {
    GlpkAnswer answer;
    Outcome outcome = simplex(options_.presolve);
    if (outcome.status == Status::optimal && program.has_whole_columns()) {
      outcome = whole_numbers(program, answer);
    } else if (outcome.status == Status::optimal) {
      read_columns(answer);
      read_duals(answer);
    }
    answer.status = outcome.status;
    answer.message = std::move(outcome.message);
    answer.iterations = iterations();
    return answer;
  }

 private:
  int iterations() const { return glp_get_it_cnt(problem_) - iterations_at_start_; }

  int milliseconds_left() const {
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start_;
    const double left = 1000.0 * (options_.seconds - spent.count());
    return static_cast<int>(std::clamp(left, 0.0, 1e9));
  }

  // In slices of iterations, which do not depend on the clock, so that a stop request is
  // seen in between.
  Outcome simplex(bool presolve) {
    constexpr int slice = 5'000;
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.meth = options_.simplex == Simplex::dual ? GLP_DUALP : GLP_PRIMAL;
    parameters.presolve = presolve ? GLP_ON : GLP_OFF;
    if (tolerance_ > 0.0) parameters.tol_bnd = parameters.tol_dj = tolerance_;
    bool restarted = false;
    while (true) {
      const int left = options_.iterations - iterations();
      if (options_.stop.stop_requested()) return {Status::limit_reached, "stopped on request"};
      if (left <= 0) return {Status::limit_reached, "the limit of iterations was reached"};
      parameters.tm_lim = milliseconds_left();
      // A presolved solve leaves no basis to go on from.
      parameters.it_lim = presolve ? left : std::min(left, slice);
      const int code = glp_simplex(problem_, &parameters);
      if (code == GLP_ETMLIM) return {Status::limit_reached, "the limit of time was reached"};
      if (code == GLP_EITLIM) continue;
      if (code == GLP_EBOUND) return {Status::infeasible, "no whole number within its bounds"};
      if (code == GLP_ENOPFS) return infeasible;
      if (code == GLP_ENODFS) return simplex(false);  // unbounded, or infeasible as well
      const int found = glp_get_status(problem_);
      if (code == 0 && found == GLP_OPT) return {Status::optimal, "optimal"};
      if (code == 0 && found == GLP_NOFEAS) return infeasible;
      if (code == 0 && found == GLP_UNBND) return unbounded;
      if (restarted) return {Status::numerical_trouble, "the simplex method gave up"};
      restarted = true;
      glp_adv_basis(problem_, 0);
      parameters.meth = GLP_PRIMAL;
    }
  }

  // After the optimum without the wish for whole numbers.
  Outcome whole_numbers(const LinearProgram& program, GlpkAnswer& answer) {
    Watch watch{&options_.stop, glp_get_obj_val(problem_)};
    glp_iocp parameters;
    glp_init_iocp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.mip_gap = options_.relative_gap;
    parameters.tm_lim = milliseconds_left();
    parameters.cb_func = &look;
    parameters.cb_info = &watch;
    const int code = glp_intopt(problem_, &parameters);
    const int found = glp_mip_status(problem_);
    const bool limit = code == GLP_ETMLIM || code == GLP_ESTOP;
    if (code == 0 && found == GLP_NOFEAS) {
      return {Status::infeasible, "no point with whole numbers satisfies all rows"};
    }
    if (!limit && code != 0 && code != GLP_EMIPGAP) {
      return {Status::numerical_trouble, "the search for whole numbers gave up"};
    }
    if (found != GLP_OPT && found != GLP_FEAS) {
      return {Status::limit_reached, "a limit was reached before any whole point was found"};
    }
    answer.bound = watch.bound;
    answer.proved = found == GLP_OPT;
    read_whole_point(program, answer);
    if (limit) return {Status::limit_reached, "a limit was reached; the bound is proved"};
    return {Status::optimal, code == GLP_EMIPGAP ? "within the gap asked" : "optimal"};
  }

  // The whole columns are held at their whole numbers and the others solved once more:
  // GLPK's own point takes numbers for whole within 1e-5. This is quick and has no part
  // in the limits, which may have been reached already.
  void read_whole_point(const LinearProgram& program, GlpkAnswer& answer) {
    for (std::size_t j = 0; j < program.columns.size(); ++j) {
      answer.columns.push_back(glp_mip_col_val(problem_, glpk_index(j)));
      if (!program.columns[j].whole) continue;
      answer.columns[j] = std::round(answer.columns[j]);
      glp_set_col_bnds(problem_, glpk_index(j), GLP_FX, answer.columns[j], answer.columns[j]);
    }
    const Options without_limits;
    Run rest(problem_, without_limits, tolerance_);
    if (rest.simplex(false).status == Status::optimal) read_columns(answer);
    for (std::size_t j = 0; j < program.columns.size(); ++j) {
      if (program.columns[j].whole) put_column(problem_, j, program.columns[j]);
    }
  }

  void read_columns(GlpkAnswer& answer) const {
    const int count = glp_get_num_cols(problem_);
    answer.columns.clear();
    for (int j = 1; j <= count; ++j) answer.columns.push_back(glp_get_col_prim(problem_, j));
  }

  void read_duals(GlpkAnswer& answer) const {
    const int count = glp_get_num_rows(problem_);
    for (int i = 1; i <= count; ++i) answer.duals.push_back(glp_get_row_dual(problem_, i));
  }

  struct Watch {
    const std::stop_token* stop;
    double bound;  // of the best open branch, as last seen
  };
  static void look(glp_tree* tree, void* info) {
    auto& watch = *static_cast<Watch*>(info);
    const int best = glp_ios_best_node(tree);
    const double bound = best == 0 ? infinity : glp_ios_node_bound(tree, best);
    constexpr double no_bound_yet = 1e300;  // GLPK's largest number stands for none
    if (std::fabs(bound) < no_bound_yet) watch.bound = bound;
    if (watch.stop->stop_requested()) glp_ios_terminate(tree);
  }

  inline static const Outcome infeasible = {Status::infeasible,
                                            "no point satisfies all rows and bounds"};
  inline static const Outcome unbounded = {Status::unbounded, "the value has no limit"};

  glp_prob* problem_;
  const Options& options_;
  double tolerance_;
  int iterations_at_start_;
  std::chrono::steady_clock::time_point start_;
};

}  // namespace

std::string run_guarded(const std::function<void()>& work) {
  Environment& own = environment();
  try {
    work();
  } catch (const GlpkError&) {
    return own.recover();
  }
  return "";
}

GlpkModel::~GlpkModel() {
  // Of another environment: that one frees it, or has done so.
  if (alive()) glp_delete_prob(problem_);
}

bool GlpkModel::alive() const { return problem_ != nullptr && environment_ == current_environment; }

std::string GlpkModel::build(const LinearProgram& program) {
  return run_guarded([&] {
    problem_ = glp_create_prob();
    environment_ = current_environment;
    load(problem_, program);
  });
}

void GlpkModel::add_column(const Column& column, const std::vector<Term>& terms_by_row) {
  require(alive(), "a GlpkModel is built before it is used");
  run_guarded([&] {
    const int j = glp_add_cols(problem_, 1);
    put_column(problem_, static_cast<std::size_t>(j - 1), column);
    const Terms terms(terms_by_row);
    glp_set_mat_col(problem_, j, terms.count(), terms.indexes.data(), terms.values.data());
    glp_set_sjj(problem_, j, scale_of(terms, [&](int i) { return glp_get_rii(problem_, i); }));
  });
}

void GlpkModel::add_row(const Row& row, const std::vector<Term>& terms_by_column) {
  require(alive(), "a GlpkModel is built before it is used");
  run_guarded([&] {
    const int i = glp_add_rows(problem_, 1);
    put_row(problem_, static_cast<std::size_t>(i - 1), row);
    const Terms terms(terms_by_column);
    glp_set_mat_row(problem_, i, terms.count(), terms.indexes.data(), terms.values.data());
    glp_set_rii(problem_, i, scale_of(terms, [&](int j) { return glp_get_sjj(problem_, j); }));
  });
}

void GlpkModel::set_column(std::size_t index, const Column& column) {
  require(alive(), "a GlpkModel is built before it is used");
  run_guarded([&] { put_column(problem_, index, column); });
}

void GlpkModel::set_row(std::size_t index, const Row& row) {
  require(alive(), "a GlpkModel is built before it is used");
  run_guarded([&] { put_row(problem_, index, row); });
}

GlpkAnswer GlpkModel::solve(const LinearProgram& program, const Options& options,
                            double tolerance) {
  require(alive(), "a GlpkModel is built before it is used");
  GlpkAnswer answer;
  const std::string failed =
      run_guarded([&] { answer = Run(problem_, options, tolerance).solve(program); });
  if (failed.empty()) return answer;
  answer = {};
  answer.message = failed;
  return answer;
}

}  // namespace staddle::lp

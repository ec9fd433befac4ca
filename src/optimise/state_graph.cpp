// SPDX-License-Identifier: GPL-3.0-or-later
#include "optimise/state_graph.h"

namespace staddle {
namespace {

class GraphMaker {
 public:
  GraphMaker(const CaseKernel& kernel, const LatticeRules& rules, double land_value_usd_ac,
             std::size_t most_states)
      : kernel_(kernel), rules_(rules), land_value_(land_value_usd_ac), most_states_(most_states) {}

  StateGraph make() {
    graph_.complete = true;
    StandPoint start = kernel_.start();
    // Planting is paid by whatever is chosen at the start.
    follow(start, State{graph_.process.states++, 0.0, 0.0, 1.0});
    return std::move(graph_);
  }

 private:
  // A state and what the path to it has added up already.
  struct State {
    std::size_t index;
    double money, land_weight;  // present dollars and weight so far
    double scale;               // discount factor times share standing
  };

  // Reward and the weight of the way back to bare land, in the state's own dollars.
  dp::Action action(const State& from, double money, double land_weight) const {
    dp::Action action;
    action.state = from.index;
    action.reward = (money - from.money) / from.scale;
    const double bare = (land_weight - from.land_weight) / from.scale;
    if (kernel_.standing()) {
      action.reward += bare * land_value_;
    } else if (bare > 0.0) {
      action.transitions.push_back({0, bare});
    }
    return action;
  }

  void follow(StandPoint point, const State& from) {
    Measured measured;
    const int cut_from = rules_.next_cut_from(point);
    const int final_from = rules_.next_final_from(point);
    const bool may_cut_again = point.entries < rules_.max_thinnings();
    while (graph_.complete) {
      if (point.age_yr >= final_from && point.age_yr <= rules_.final_to()) {
        kernel_.measure_tons(point, measured);
        const FinishedRegime finished = kernel_.harvest(point, measured);
        graph_.process.actions.push_back(action(from, finished.money, finished.land_weight));
      }
      if (may_cut_again && point.age_yr >= cut_from && point.age_yr <= rules_.cut_to()) {
        add_cuts(point, measured, from);
      }
      if (point.age_yr >= rules_.final_to()) return;
      kernel_.advance(point, measured);
    }
  }

  void add_cuts(const StandPoint& point, Measured& measured, const State& from) {
    kernel_.measure_tons(point, measured);
    if (!rules_.stand_may_be_cut(measured)) return;
    Cut cut;
    for (std::size_t i = 0; i < rules_.removals_allowed(point.age_yr); ++i) {
      const double removal = rules_.removals()[i];
      if (!rules_.leaves_trees(removal, point.entries)) continue;
      kernel_.work_out_cut(point, measured, removal, cut);
      if (!rules_.cut_may_be_taken(cut)) continue;
      if (graph_.process.states >= most_states_) {
        graph_.complete = false;
        return;
      }
      StandPoint child = point;
      kernel_.take_cut(child, measured, cut);
      const State to{graph_.process.states++, child.money, child.land_weight,
                     kernel_.discount(child.age_yr) * child.alive};
      dp::Action step = action(from, child.money, child.land_weight);
      step.transitions.push_back({to.index, to.scale / from.scale});
      graph_.process.actions.push_back(std::move(step));
      follow(child, to);
    }
  }

  const CaseKernel& kernel_;
  const LatticeRules& rules_;
  double land_value_;
  std::size_t most_states_;
  StateGraph graph_;
};

}  // namespace

StateGraph make_state_graph(const CaseKernel& kernel, const LatticeRules& rules,
                            double land_value_usd_ac, std::size_t most_states) {
  return GraphMaker(kernel, rules, land_value_usd_ac, most_states).make();
}

}  // namespace staddle

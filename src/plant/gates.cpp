// SPDX-License-Identifier: GPL-3.0-or-later
#include "staddle/plant/gates.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "signs/plain_words.h"

namespace staddle {
namespace {

constexpr int sprouting_until_yr = 4;     // cut younger, loblolly sprouts again
constexpr int young_stand_until_yr = 10;  // a precommercial thinning is useful to about here
constexpr int last_month_sprayed_same_year = 2;

// The words of a text, in small letters.
std::vector<std::string> words_in(const std::string& text) {
  std::vector<std::string> found(1);
  for (const char letter : text) {
    const bool upper = letter >= 'A' && letter <= 'Z';
    const char small = upper ? static_cast<char>(letter - 'A' + 'a') : letter;
    if (small >= 'a' && small <= 'z') {
      found.back() += small;
    } else if (!found.back().empty()) {
      found.emplace_back();
    }
  }
  return found;
}

// Beds by its methods, or by what it pays for: the gate is not passed by leaving the method
// out.
bool makes_beds(const EstablishmentAlternative& alternative) {
  if (alternative.has(SiteMethod::bed)) return true;
  static constexpr std::array<std::string_view, 4> names = {"bed", "beds", "bedding", "bedded"};
  return std::ranges::any_of(alternative.practices, [](const Practice& practice) {
    return std::ranges::any_of(words_in(practice.what), [](const std::string& word) {
      return std::ranges::find(names, word) != names.end();
    });
  });
}

bool blank(const std::string& text) { return text.find_first_not_of(" \t") == std::string::npos; }

const char* month_name(int month) {
  static constexpr std::array names = {"January",   "February", "March",    "April",
                                       "May",       "June",     "July",     "August",
                                       "September", "October",  "November", "December"};
  return names[static_cast<std::size_t>(month - 1)];
}

class Gates {
 public:
  explicit Gates(const PlantProblem& problem) : problem_(problem) {}

  std::vector<PlantGate> tell() {
    wetland();
    herbicide();
    fire();
    spray_window();
    after_spraying();
    young_sprays();
    precommercial();
    unprepared();
    season();
    responses();
    return std::move(gates_);
  }

 private:
  void add(const char* topic, std::string text) { gates_.push_back({topic, std::move(text)}); }

  // The names of the alternatives that a rule concerns.
  template <class Concerned>
  std::vector<std::string> names_of(const Concerned& concerned) const {
    std::vector<std::string> names;
    for (const EstablishmentAlternative& alternative : problem_.alternatives) {
      if (concerned(alternative)) names.push_back("\"" + alternative.name + "\"");
    }
    return names;
  }
  bool any(SiteMethod method) const {
    return std::ranges::any_of(problem_.alternatives,
                               [&](const EstablishmentAlternative& a) { return a.has(method); });
  }

  void wetland() {
    const SiteFacts& site = problem_.site;
    std::string text =
        "Wetlands and hydric soils are protected. Bedding for pine is done only where pine was "
        "about half of the old stand or more; ask the authority before any machine goes in.";
    const auto beds = names_of(makes_beds);
    if (!beds.empty() && blank(site.wet_site_statement)) {
      text = fmt::format(
                 "Left out: {}. Beds need your statement on the wet ground "
                 "(site.wet_site_statement): what the authority said, and how much of the "
                 "old stand was pine. ",
                 words::list(beds)) +
             text;
    } else if (!beds.empty()) {
      text +=
          fmt::format(" You state: \"{}\". Nobody has checked that here.", site.wet_site_statement);
    }
    if (site.drainage == SiteFacts::Drainage::wet) {
      text += " This ground is wet: log and prepare it in the dry season only.";
    }
    add("wetland", text);
  }

  void herbicide() {
    add("herbicide", "Herbicides are put out only by a licensed applicator and by the label.");
  }

  void fire() {
    add("burning",
        "Prescribed fire is set only by certified burners with a permit; slash settles "
        "before a burn.");
  }

  void spray_window() {
    if (!any(SiteMethod::chemical)) return;
    std::string text =
        "Spray before planting from summer to early fall, before the leaves turn. Land cut before "
        "March can usually be sprayed the same September or October; land cut later may not have "
        "sprouted enough and waits for the next year.";
    const std::optional<int>& month = problem_.site.month_of_cut;
    if (!month) {
      add("spray window", text + " Give the month of the cut (site.month_of_cut) to know which.");
      return;
    }
    if (*month <= last_month_sprayed_same_year) {
      add("spray window", text + fmt::format(" Cut in {}: spray in September or October of the "
                                             "same year and plant in the winter that follows, "
                                             "about a year after the cut.",
                                             month_name(*month)));
      return;
    }
    text += fmt::format(
        " Cut in {}: spray in September or October of the year after and plant in "
        "the winter that follows, {} after the cut.",
        month_name(*month), waits_two_years(*month) ? "nearly two years" : "well over a year");
    if (waits_two_years(*month) && problem_.regeneration_delay_yr < 2) {
      text += fmt::format(
          " The figures count {} without trees; for what is sprayed, set "
          "economics.regeneration_delay_yr to 2.",
          problem_.regeneration_delay_yr == 1 ? "one year" : "no year");
    }
    add("spray window", text);
  }
  static bool waits_two_years(int month) { return month <= 8; }

  void after_spraying() {
    const auto both = names_of([](const EstablishmentAlternative& a) {
      return a.has(SiteMethod::chemical) && a.has(SiteMethod::burn);
    });
    if (both.empty()) return;
    add("burn after spraying", "Wait about eight weeks after spraying before burning.");
  }

  void young_sprays() {
    if (any(SiteMethod::herbaceous)) {
      add("herbaceous control",
          "Spray the weeds from March to May of the first year. What it gains fades where woody "
          "basal area exceeds 17 square feet an acre at age 15 (South et al. 2006): without "
          "hardwood control before planting, count on less.");
    }
    if (any(SiteMethod::release)) {
      add("release",
          "Release sprays go out from August to October. In a young stand they are "
          "weaker, and control less, than spraying before planting.");
    }
  }

  void precommercial() {
    const auto thinned = [](const EstablishmentAlternative& a) -> std::optional<int> {
      if (!a.response.precommercial) return std::nullopt;
      return a.response.precommercial->at.whole();
    };
    const auto early = names_of([&](const EstablishmentAlternative& a) {
      return thinned(a).value_or(sprouting_until_yr) < sprouting_until_yr;
    });
    if (!early.empty()) {
      add("sprouting", fmt::format("Loblolly cut younger than four years sprouts again: {} would "
                                   "have to be done twice. The figures do not know that. Thin at "
                                   "four.",
                                   words::list(early)));
    }
    const auto late = names_of([&](const EstablishmentAlternative& a) {
      return thinned(a).value_or(young_stand_until_yr) > young_stand_until_yr;
    });
    if (!late.empty()) {
      add("precommercial thinning",
          fmt::format("A thinning of trees too small to sell is useful to about age ten: {} {} "
                      "later.",
                      words::list(late), late.size() == 1 ? "is" : "are"));
    }
  }

  void unprepared() {
    const auto bare = names_of([](const EstablishmentAlternative& a) {
      return a.methods.empty() && a.response.years_gained >= 0.0;
    });
    if (bare.empty()) return;
    add("no preparation",
        fmt::format("No study prints what a stand loses where the ground is not prepared at all: "
                    "{} {} as if burnt, and will often do worse.",
                    words::list(bare), bare.size() == 1 ? "counts" : "count"));
  }

  void season() {
    add("planting season",
        "Order seedlings six to twelve months ahead. Plant between December and "
        "early March.");
  }

  void responses() {
    const auto twice = names_of([](const EstablishmentAlternative& a) {
      return a.response.hardwood_percent > 0.0 && a.response.years_gained > 0.0;
    });
    if (twice.empty()) return;
    add("hardwoods counted twice",
        fmt::format("{} {} both years gained and a share of hardwoods: control of hardwoods is "
                    "much of what years are gained by. Give the share that is left after it.",
                    words::list(twice), twice.size() == 1 ? "has" : "have"));
  }

  const PlantProblem& problem_;
  std::vector<PlantGate> gates_;
};

}  // namespace

std::string shut_by(const EstablishmentAlternative& alternative, const SiteFacts& site) {
  if (!makes_beds(alternative) || !blank(site.wet_site_statement)) return "";
  return "beds need a statement on the wet ground (site.wet_site_statement): wetlands are "
         "protected, and pine must have been about half of the old stand or more";
}

std::vector<PlantGate> plant_gates(const PlantProblem& problem) { return Gates(problem).tell(); }

}  // namespace staddle

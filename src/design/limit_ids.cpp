#include "design/limit_ids.hpp"

namespace loopwright::design {

const std::vector<std::string>& limit_ids() {
    static const std::vector<std::string> all{"fcc_1_1310",     "icnirp_2020", "icnirp_2020_local",
                                              "icnirp_1998",    "icnirp_2010", "eu_1999_519",
                                              "ieee_c95_1_2019"};
    return all;
}

const std::vector<std::string>& default_limits(int region) {
    static const std::vector<std::string> americas{"fcc_1_1310", "icnirp_2020"};
    static const std::vector<std::string> others{"icnirp_2020", "icnirp_1998", "icnirp_2010"};
    return region == 2 ? americas : others;
}

const std::vector<std::string>& chosen_limits(const Station& station) {
    return station.limits.empty() ? default_limits(station.region) : station.limits;
}

} // namespace loopwright::design

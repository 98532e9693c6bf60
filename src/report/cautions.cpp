#include "report/cautions.hpp"

namespace loopwright::report {

std::vector<Sentence> cautions(bool with_distances) {
    return {
        {"caution_kilovolts",
         "Kilovolts: a few watts put up to thousands of volts across the capacitor and high current into the "
         "conductor. Arcs start fires. Never touch the loop, and let nobody touch it, while it may be keyed; "
         "keep it "
         "out of the reach of children and animals."},
        {"caution_burns",
         "RF burns: touching the conductor, the capacitor or metal near them burns deep under the "
         "skin, and it is felt late."},
        {with_distances ? "caution_exposure_distances" : "caution_exposure",
         std::string("Exposure: close to the loop the fields can exceed the limits for people, also at low "
                     "power. ") +
             (with_distances
                  ? "The distances here hold for what is computed and nothing else: keep more. People with "
                    "implants or medical devices keep away; no limit here covers them."
                  : "No distance is established here: treat the loop as hazardous and keep everybody away "
                    "while it sends.")},
        {"caution_tuning", "Tuning by hand is the dangerous moment: find resonance by received noise first, "
                           "then with the lowest power "
                           "that shows a reading, keyed for seconds, and step back before full power (common "
                           "practice, no source)."},
        {"caution_law",
         "Law and skill: the exposure rules, the electrical and building codes and the licence terms of "
         "your country come before this page. It replaces neither licensed practice nor measurement."},
    };
}

std::vector<Sentence> assumptions(loop::Model model, const base::Notices& notices) {
    std::vector<Sentence> all;
    if (model == loop::Model::closed_form) {
        all.push_back(
            {"model_closed_form",
             "The figures are for free space, computed with the closed form. The ground and everything "
             "else near the loop are not in them; over real ground a low loop loses more."});
    } else {
        all.push_back({"model_full_wave",
                       "The figures are computed with the full-wave model for the site that the "
                       "design names. Nothing else near the loop is in them."});
    }
    all.push_back({"convention_power",
                   "Power is the peak envelope power that the loop accepts; loss in the feed line "
                   "and by mismatch lies before it. Currents and voltages are rms unless peak is "
                   "said, for that power."});
    all.push_back({"convention_q",
                   "Q unloaded is that of the loop alone; the bandwidths are those of the loop matched "
                   "at resonance (Q loaded, half of it)."});
    all.push_back(
        {"convention_verdict",
         "A verdict holds the unfavourable end of an interval against the limit. It judges what is computed "
         "here and nothing else. A rating holds for a clean, dry capacitor at its rated conditions: leave "
         "margin."});
    for (const base::Notice& notice : notices.worst_first()) {
        if (notice.code != "free_space_only" || notice.severity > base::Severity::information) {
            all.push_back({notice.code, notice.text});
        }
    }
    return all;
}

} // namespace loopwright::report

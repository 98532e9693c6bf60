#include "jobs/card_job.hpp"

namespace loopwright::jobs {

std::shared_ptr<const survey::Card> compute_card(const survey::CardRequest& request,
                                                 const base::StopToken& stop,
                                                 const base::Progress& progress) {
    auto card = std::make_shared<survey::Card>(survey::card(request, stop, progress));
    return card->complete ? card : nullptr;
}

} // namespace loopwright::jobs

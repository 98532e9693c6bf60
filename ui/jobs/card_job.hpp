#pragma once
// The whole retune card: a row a working frequency.
#include "jobs/job.hpp"
#include "survey/card.hpp"

#include <memory>

namespace loopwright::jobs {

/// Throws base::InputError for a design with refusals.
[[nodiscard]] std::shared_ptr<const survey::Card>
compute_card(const survey::CardRequest& request, const base::StopToken& stop, const base::Progress& progress);

class CardJob : public JobOf<survey::CardRequest, survey::Card> {
public:
    explicit CardJob(QObject* parent = nullptr) : JobOf(&compute_card, parent) {}
};

} // namespace loopwright::jobs

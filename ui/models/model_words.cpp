#include "models/model_words.hpp"

#include "models/quantity_words.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {
struct ModelWords {
    Q_DECLARE_TR_FUNCTIONS(ModelWords)
};
} // namespace

QString model_name(loop::Model model) {
    return model == loop::Model::full_wave ? ModelWords::tr("full wave") : ModelWords::tr("closed form");
}

QString ground_name(const design::Ground& ground) {
    switch (ground.kind) {
    case design::GroundKind::free_space:
        return ModelWords::tr("free space");
    case design::GroundKind::perfect:
        return ModelWords::tr("perfect ground");
    case design::GroundKind::soil:
        break;
    }
    if (!ground.class_name.empty()) {
        return QString::fromStdString(ground.class_name);
    }
    return ModelWords::tr("soil of relative permittivity %1 and %2")
        .arg(plain_number(ground.relative_permittivity, 3), short_text(ground.conductivity));
}

QString model_and_ground(loop::Model model, const design::Ground& ground) {
    if (model == loop::Model::closed_form || ground.kind == design::GroundKind::free_space) {
        return ModelWords::tr("%1, in free space").arg(model_name(model));
    }
    return ModelWords::tr("%1, over %2").arg(model_name(model), ground_name(ground));
}

QString site_words(loop::Model model, const design::Ground& ground) {
    if (ground.kind == design::GroundKind::free_space) {
        return ModelWords::tr("The design stands in free space: over real ground a low loop loses more.");
    }
    return model == loop::Model::closed_form
               ? ModelWords::tr("The site's ground is kept with the design but does not enter these figures: "
                                "over real ground a low loop loses more.")
               : ModelWords::tr("Ground, height and tilt of the site are in these figures.");
}

} // namespace loopwright::models

#include "pages/bands_height_view.hpp"

#include "charts/figure_widget.hpp"
#include "charts/height_figure.hpp"
#include "jobs/height_job.hpp"
#include "report/height.hpp"

#include <QVBoxLayout>

namespace loopwright::pages {

namespace {
jobs::HeightJob& height_job(jobs::Job& job) {
    return static_cast<jobs::HeightJob&>(job);
}
} // namespace

HeightView::HeightView(const Context& context, QWidget* parent)
    : FocusedView(context, new jobs::HeightJob, parent) {
    column().addWidget(add_figure(), 1);
    show_reason(tr("not computed yet"));
}

HeightView::~HeightView() = default;

void HeightView::start() {
    survey::HeightRequest request;
    request.design = context().document.design();
    request.frequency = context().focus.frequency();
    if (request.design.site.ground.kind == design::GroundKind::free_space) {
        show_reason(tr("in free space height means nothing; give the site a ground on the Build page"));
        settle();
        return;
    }
    height_job(job()).start(request);
}

void HeightView::show_result() {
    figures()[0]->set_figure(
        std::make_shared<charts::HeightFigure>(models::height_plot(*height_job(job()).result())));
    offer_table(true);
}

std::string HeightView::table() {
    const auto result = height_job(job()).result();
    return report::to_csv(report::height_data(*result));
}

QString HeightView::table_name() {
    return FocusedView::table_name(QStringLiteral("height"), height_job(job()).result()->request.frequency);
}

void HeightView::show_reason(const QString& sentence) {
    figures()[0]->set_figure(std::make_shared<charts::HeightFigure>(models::no_height_plot(sentence)));
    offer_table(false);
}

} // namespace loopwright::pages

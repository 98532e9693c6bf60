// The rows of the headline panel: one number, its conditions, the other model's number, the way to its
// source.
#include "models/headline.hpp"
#include "pages/headline_panel.hpp"
#include "pages/standing.hpp"
#include "settings/measures.hpp"

#include <QGridLayout>
#include <QLabel>
#include <QToolButton>

namespace loopwright::pages {

namespace {

constexpr double value_size = 1.25; ///< against the usual font
/// Rows of the grid that one number takes: the number, its conditions; the first row is the heading.
constexpr int rows_a_line = 2, first_row = 1;
enum Column { label_column, value_column, other_column, why_column, column_count };

QFont value_font(const QWidget& widget) {
    QFont font = widget.font();
    font.setPointSizeF(font.pointSizeF() * value_size);
    font.setBold(true);
    return font;
}

} // namespace

void HeadlinePanel::add_line() {
    Line line{new QLabel(numbers_), new QLabel(numbers_), new QLabel(numbers_), new QLabel(numbers_),
              new QToolButton(numbers_)};
    line.value->setFont(value_font(*this));
    for (QLabel* figure : {line.value, line.other}) {
        figure->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        figure->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    line.remark->setWordWrap(true);
    line.remark->setContentsMargins(0, 0, 0, unit_px);
    line.why->setText(tr("?"));
    line.why->setAutoRaise(true);
    line.why->setFocusPolicy(Qt::StrongFocus);
    const int row = first_row + static_cast<int>(lines_.size()) * rows_a_line;
    grid_->addWidget(line.label, row, label_column);
    grid_->addWidget(line.value, row, value_column);
    grid_->addWidget(line.other, row, other_column);
    grid_->addWidget(line.why, row, why_column);
    grid_->addWidget(line.remark, row + 1, label_column, 1, column_count);
    connect(line.why, &QToolButton::clicked, this,
            [this, why = line.why] { Q_EMIT explanation_wanted(why->objectName()); });
    lines_.push_back(line);
}

void HeadlinePanel::show_line(std::size_t index, const models::Headline& headline) {
    const Line& line = lines_.at(index);
    line.label->setText(headline.label);
    line.value->setText(headline.value);
    line.value->setAccessibleName(tr("%1, %2").arg(headline.label, headline.model));
    line.value->setToolTip(headline.established ? tr("Model: %1").arg(headline.model) : headline.reason);
    line.value->setObjectName(QStringLiteral("value.") + headline.id);
    line.remark->setObjectName(QStringLiteral("remark.") + headline.id);
    QFont font = value_font(*this);
    font.setBold(headline.established);
    line.value->setFont(font);
    line.remark->setText(standing_mark(headline.standing) + headline.remark);
    line.remark->setToolTip(headline.reason);
    line.remark->setVisible(!headline.remark.isEmpty());
    line.why->setObjectName(headline.id);
    line.why->setAccessibleName(tr("Where does %1 come from").arg(headline.label));
    line.why->setToolTip(tr("Where does this number come from: formula, parts, source, range"));
}

void HeadlinePanel::show_other(std::size_t index, const models::Headline* other) {
    QLabel& figure = *lines_.at(index).other;
    figure.setVisible(other != nullptr);
    if (other == nullptr) {
        figure.clear();
        return;
    }
    figure.setText(other->value);
    figure.setObjectName(QStringLiteral("other.") + other->id);
    figure.setAccessibleName(tr("%1, %2").arg(other->label, other->model));
    figure.setToolTip(other->established ? tr("Model: %1. %2").arg(other->model, other->remark)
                                         : other->reason);
}

void HeadlinePanel::show_notices(const std::optional<loop::OperatingPoint>& point) {
    QStringList texts;
    if (point) {
        for (const base::Notice& notice : point->notices.worst_first()) {
            texts << severity_mark(notice.severity) + QString::fromStdString(notice.text);
        }
    }
    notices_->setText(texts.join(QLatin1Char('\n')));
}

} // namespace loopwright::pages

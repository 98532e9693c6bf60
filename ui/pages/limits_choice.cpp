#include "pages/limits_choice.hpp"

#include "design/limit_ids.hpp"
#include "exposure/limits.hpp"
#include "models/keying_words.hpp"
#include "settings/measures.hpp"

#include <QCheckBox>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {

QString tiers_of(const exposure::Limit& limit) {
    QStringList tiers;
    for (const exposure::LimitTable& table : limit.tables) {
        const QString name =
            models::tier_word(table.tier) + QStringLiteral(", ") + QString::fromStdString(table.table);
        tiers << (table.from_memory ? LimitsChoice::tr("%1 (figures from memory)").arg(name) : name);
    }
    return tiers.join(QStringLiteral("; "));
}

/// Marks what is from memory: all of it, or one tier.
QString text_of(const exposure::Limit& limit) {
    QString standard = QString::fromStdString(limit.standard);
    QStringList remembered; // on a line of its own: the column is narrow
    for (const exposure::LimitTable& table : limit.tables) {
        if (table.from_memory) {
            remembered << models::tier_word(table.tier);
        }
    }
    if (remembered.isEmpty()) {
        return standard;
    }
    return static_cast<std::size_t>(remembered.size()) == limit.tables.size()
               ? LimitsChoice::tr("%1\n(from memory)").arg(standard)
               : LimitsChoice::tr("%1\n(%2 from memory)")
                     .arg(standard, remembered.join(QStringLiteral(", ")));
}

QString listed_limits(const std::vector<std::string>& ids) {
    QStringList names;
    for (const std::string& id : ids) {
        names << QString::fromStdString(id);
    }
    return names.join(QLatin1Char(' '));
}

} // namespace

LimitsChoice::LimitsChoice(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), refusal_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2 * unit_px, 0, 0, 0);
    column->setSpacing(0);
    for (const exposure::Limit& limit : exposure::limits()) {
        auto* box = new QCheckBox(text_of(limit), this);
        box->setObjectName(QStringLiteral("limit.") + QString::fromStdString(limit.id));
        box->setAccessibleName(tr("Limit %1").arg(box->text().replace(QLatin1Char('\n'), QLatin1Char(' '))));
        box->setToolTip(tr("%1, %2. For: %3. %4")
                            .arg(QString::fromStdString(limit.standard),
                                 QString::fromStdString(limit.edition), tiers_of(limit),
                                 QString::fromStdString(limit.remark)));
        box->setAccessibleDescription(box->toolTip());
        connect(box, &QCheckBox::clicked, this,
                [this, name = QString::fromStdString(limit.standard)] { take(name); });
        column->addWidget(box);
        boxes_ << box;
    }
    refusal_->setWordWrap(true);
    refusal_->setText(
        tr("At least one limit has to be checked. Which one applies is a matter of the law where "
           "you are."));
    refusal_->hide();
    column->addWidget(refusal_);
    connect(&context_.document, &session::Document::design_changed, this, &LimitsChoice::refresh);
    refresh();
}

void LimitsChoice::refresh() {
    const auto& chosen = design::chosen_limits(context_.document.design().station);
    const auto& all = exposure::limits();
    for (std::size_t i = 0; i < all.size(); ++i) {
        boxes_[static_cast<qsizetype>(i)]->setChecked(std::find(chosen.begin(), chosen.end(), all[i].id) !=
                                                      chosen.end());
    }
    refusal_->hide();
}

void LimitsChoice::take(const QString& changed) {
    design::Design next = context_.document.design();
    const std::vector<std::string> before = design::chosen_limits(next.station);
    std::vector<std::string> chosen;
    const auto& all = exposure::limits();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (boxes_[static_cast<qsizetype>(i)]->isChecked()) {
            chosen.push_back(all[i].id);
        }
    }
    if (chosen.empty()) {
        refresh();
        refusal_->setText(tr("At least one limit has to be checked (%1 stays). Which one applies is a matter "
                             "of the law where you are.")
                              .arg(changed));
        refusal_->show();
        return;
    }
    // Those of the region by default stay the default, also for a later edition of the program.
    const auto& usual = design::default_limits(next.station.region);
    const bool as_usual =
        chosen.size() == usual.size() && std::all_of(usual.begin(), usual.end(), [&](const auto& id) {
            return std::find(chosen.begin(), chosen.end(), id) != chosen.end();
        });
    next.station.limits = as_usual ? std::vector<std::string>{} : chosen;
    context_.document.end_merge();
    context_.document.edit(next, {tr("Limits"), listed_limits(before), listed_limits(chosen)},
                           QStringLiteral("limits"));
    refresh();
}

} // namespace loopwright::pages

#include "ui/core_texts.hpp"

#include "app/main_window.hpp"
#include "app/samples.hpp"
#include "band/band.hpp"
#include "band/emission.hpp"
#include "conductor/metals.hpp"
#include "conductor/tube_sizes.hpp"
#include "exposure/limits.hpp"
#include "ground/ground_classes.hpp"
#include "pages/capacitor_catalog.hpp"
#include "units/text.hpp"

#include "loop/explain.hpp"
#include "loop/model_difference.hpp"
#include "report/keying.hpp"
#include "report/page.hpp"
#include "survey/card.hpp"

#include <QRegularExpression>

#include <algorithm>

namespace loopwright::test {

namespace {

/// A piece of words as people and the core write it: letters, with the signs of units.
const QString word_pattern = QStringLiteral("[A-Za-z\u00b5\u03bc\u03a9\u00b0]+");

} // namespace

CoreTexts::CoreTexts() {
    for (const auto& limit : exposure::limits()) {
        add(limit.standard), add(limit.edition), add(limit.remark);
        for (const auto& table : limit.tables) {
            add(table.table);
        }
    }
    for (const auto& metal : conductor::metals()) {
        add(metal.name), add(metal.source);
    }
    for (const auto& size : conductor::tube_sizes()) {
        add(size.name), add(size.standard);
    }
    for (const auto& soil : ground::ground_classes()) {
        add(soil.name), add(soil.source);
    }
    for (const auto& emission : band::emissions()) {
        add(emission.name), add(emission.duty_source), add(emission.width_source);
    }
    for (int region = 1; region <= 3; ++region) {
        for (const auto& band : band::bands_of(region)) {
            add(band.name), add(band.remark);
        }
    }
    for (const auto& capacitor : pages::capacitor_catalog()) {
        add(capacitor.name), add(capacitor.note);
    }
    for (const auto& sample : app::samples()) {
        add(sample.design);
    }
    words_ << QStringLiteral("dBi") << QStringLiteral("j"); // over isotropic; the imaginary unit
    add(QStringLiteral("/dev/ttyUSB0"));
    const QRegularExpression word(word_pattern);
    for (int dimension = 0; dimension <= static_cast<int>(units::Dimension::magnetic_field); ++dimension) {
        for (const units::Unit& unit : units::units_of(static_cast<units::Dimension>(dimension))) {
            for (auto each = word.globalMatch(QString::fromStdString(unit.symbol)); each.hasNext();) {
                words_.insert(each.next().captured());
            }
        }
    }
}

void CoreTexts::add(const QString& text) {
    const QString even = text.simplified();
    if (even.size() > 1) {
        texts_.insert(even);
        for (const QString& clause : even.split(QStringLiteral("; "))) { // a cell may show the first alone
            texts_.insert(clause);
        }
    } else {
        words_.insert(even);
    }
}

void CoreTexts::add(const base::Notices& notices) {
    for (const base::Notice& notice : notices.all()) {
        add(notice.text);
    }
}

void CoreTexts::add(const survey::Card& card) {
    for (const survey::CardRow& row : card.rows) {
        add(row.use), add(row.point.notices);
        QStringList cell; // its lines may break anywhere
        for (const survey::CardRemark& remark : row.remarks) {
            add(remark.text);
            cell << QString::fromStdString(remark.text);
        }
        add(cell.join(QStringLiteral("; ")));
    }
}

void CoreTexts::add(const design::Design& design) {
    add(design.title), add(design.note);
}

void CoreTexts::add(app::MainWindow& window) {
    add(window.document().design());
    add(window.document().display_name());
    if (const auto survey = window.survey().result()) {
        add(report::report_page(*survey));
        for (const survey::BandRow& row : survey->bands) {
            add(row.point.notices);
            add(row.verdict_text);
            for (const survey::Reason& reason : row.further) {
                add(reason.text);
            }
        }
    }
    if (const auto point = window.point().result()) {
        add(point->point.notices);
        if (point->other) {
            add(point->other->notices);
            const bool full = point->point.model == loop::Model::full_wave;
            for (const auto& reason :
                 loop::difference(full ? *point->other : point->point, full ? point->point : *point->other,
                                  point->request.design.site.ground)
                     .reasons) {
                add(reason.text);
            }
        }
    }
    if (const auto& keying = window.keying().result()) {
        add(report::keying_page(*keying));
        for (const survey::KeyingBand& band : keying->bands) {
            for (const survey::KeyingReason& reason : band.reasons) {
                add(reason.text), add(reason.fix);
                add(QString::fromStdString(reason.text).section(QStringLiteral("; "), 0, 0)); // the table's
            }
            for (const std::string& remark : band.remarks) {
                add(remark);
            }
        }
    }
}

void CoreTexts::add_explanations(app::MainWindow& window) {
    const auto point = window.point().result();
    if (!point) {
        return;
    }
    for (const auto& explanation : loop::explanations(point->request.design, point->point)) {
        for (const std::string& text :
             {explanation.title, explanation.formula, explanation.source, explanation.validity}) {
            add(text);
        }
        for (const loop::Symbol& symbol : explanation.symbols) {
            add(symbol.meaning), add(symbol.value);
            words_.insert(QString::fromStdString(symbol.name)
                              .remove(QRegularExpression("[^A-Za-z\u00b5\u03bc\u03a9]")));
        }
    }
}

void CoreTexts::add(const report::Page& page) {
    for (const report::Section& section : page.sections) {
        for (const report::Sentence& sentence : section.sentences) {
            add(sentence.text);
        }
    }
}

QStringList CoreTexts::foreign_words(const QString& shown) const {
    static const QRegularExpression bare_word(QStringLiteral("^[A-Za-z]*$"));
    QString left = shown.simplified();
    QString piece = left;
    piece.remove(QChar(0x2026));
    if (!bare_word.match(piece).hasMatch() &&
        std::any_of(texts_.begin(), texts_.end(),
                    [&](const QString& text) { return text.contains(piece); })) {
        return {};
    }
    QStringList core(texts_.begin(), texts_.end());
    std::sort(core.begin(), core.end(),
              [](const QString& a, const QString& b) { return a.size() > b.size(); });
    for (const QString& text : core) {
        if (left.contains(text)) {
            left.replace(
                QRegularExpression(
                    QStringLiteral("(?<![A-Za-z])%1(?![A-Za-z])").arg(QRegularExpression::escape(text))),
                QStringLiteral(" "));
        }
    }
    QStringList foreign;
    const QRegularExpression word(word_pattern);
    for (auto each = word.globalMatch(left); each.hasNext();) {
        const QString found = each.next().captured();
        if (!words_.contains(found)) {
            foreign << found;
        }
    }
    return foreign;
}

} // namespace loopwright::test

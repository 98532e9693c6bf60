#include "models/card_table.hpp"

#include "models/chart_content.hpp"
#include "models/dial_plot.hpp"
#include "models/match_plot.hpp"
#include "models/quantity_words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <optional>

namespace loopwright::models {

namespace {

struct Cards {
    Q_DECLARE_TR_FUNCTIONS(Cards)
};

using survey::CardRow;

struct Marks {
    std::optional<design::Dial> dial;
    [[nodiscard]] double step() const { return dial->hand_step / dial->reduction; }
    [[nodiscard]] QString text(double reading) const { return reading_text(reading, dial->scale, step()); }
    /// With digits enough for a figure that is smaller than the step.
    [[nodiscard]] QString fine(double change) const {
        return reading_text(change, dial->scale, std::min(step(), std::abs(change)));
    }
};

QString missing() {
    return Cards::tr("not established");
}

/// Where a figure has no place: established or not, no setting of this capacitor gives it.
QString none(const CardRow& row) {
    return row.point.resonance && !row.reachable ? QStringLiteral("\u2013") : missing();
}

QString dial_cell(const CardRow& row, const std::optional<tuning::Reading>& reading, const Marks& scale,
                  bool interval) {
    if (!scale.dial) {
        return Cards::tr("no dial");
    }
    if (row.point.resonance && !row.reachable) {
        return interval ? Cards::tr("out of reach") : none(row);
    }
    if (!reading) {
        return missing();
    }
    if (!reading->within_stops) {
        return Cards::tr("beyond the stop");
    }
    const QString text = scale.text(reading->reading);
    return interval ? Cards::tr("%1 ± %2").arg(text, scale.fine(reading->uncertainty())) : text;
}

QString remarks(const CardRow& row) {
    QStringList texts;
    for (const survey::CardRemark& remark : row.remarks) {
        texts << QString::fromStdString(remark.text);
    }
    return texts.join(QStringLiteral("; "));
}

QString capacitance_cell(const CardRow& row) {
    return row.point.resonance
               ? measured_text(Measure::capacitance, row.point.resonance->tuning_capacitance.value())
               : missing();
}

QString plugged(const CardRow& row, const design::Capacitor& capacitor) {
    QStringList names;
    for (const std::size_t index : row.plugged) {
        const design::AddedCapacitor& added = capacitor.added.at(index);
        names << (added.note.empty() ? short_text(added.capacitance) : QString::fromStdString(added.note));
    }
    return names.isEmpty() ? QStringLiteral("\u2013") : names.join(QStringLiteral(" + "));
}

} // namespace

TextTable card_table(const survey::Card& card) {
    const design::Capacitor& capacitor = card.request.design.capacitor;
    const Marks scale{capacitor.dial};
    const bool calibrated = std::any_of(card.rows.begin(), card.rows.end(),
                                        [](const CardRow& row) { return row.calibrated.has_value(); });
    const auto add = [](TextTable& table, const QString& heading, const QString& tip, bool is_figure) {
        if (is_figure) {
            table.figures << static_cast<int>(table.headings.size());
        }
        table.headings << heading;
        table.tips << tip;
    };
    TextTable table;
    add(table, Cards::tr("Band"), {}, false);
    add(table, Cards::tr("Use"), Cards::tr("What the frequency is used for"), false);
    add(table, Cards::tr("Radio"), Cards::tr("What the radio shows"), true);
    add(table, Cards::tr("Set the dial to"),
        calibrated ? Cards::tr("By the calibration, with its 95 % interval")
                   : Cards::tr("Predicted from the file, with its interval; not calibrated"),
        true);
    if (calibrated) {
        add(table, Cards::tr("Predicted"), Cards::tr("By the file alone"), true);
    }
    add(table, Cards::tr("Dial\nfor 10 kHz"), Cards::tr("Change of the reading for 10 kHz up"), true);
    add(table, Cards::tr("Usable\nuntouched"),
        Cards::tr("Without retuning: VSWR %1 or less").arg(plain_number(card.request.vswr_limit, 3)), true);
    add(table, Cards::tr("Capacitance"), Cards::tr("In all, stray and what is added included"), true);
    if (!capacitor.added.empty()) {
        add(table, Cards::tr("Fixed\ncapacitors"), Cards::tr("Those plugged or switched in"), false);
    }
    add(table, Cards::tr("Remarks"), {}, false);
    for (const CardRow& row : card.rows) {
        QStringList texts;
        texts << QString::fromStdString(row.band) << QString::fromStdString(row.use)
              << exact_frequency(row.radio.value()) << dial_cell(row, row.dial(), scale, true);
        if (calibrated) {
            texts << dial_cell(row, row.predicted, scale, false);
        }
        constexpr double ten_kHz = 1e4;
        texts << (scale.dial && row.dial() ? scale.fine(row.dial()->per_Hz * ten_kHz) : none(row));
        texts << (row.usable_span && row.reachable
                      ? measured_text(Measure::frequency, row.usable_span_low()->value())
                      : none(row));
        texts << capacitance_cell(row);
        if (!capacitor.added.empty()) {
            texts << plugged(row, capacitor);
        }
        texts << remarks(row);
        table.rows << texts;
    }
    return table;
}

} // namespace loopwright::models

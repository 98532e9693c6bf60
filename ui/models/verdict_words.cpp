#include "models/verdict_words.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {
struct Verdicts {
    Q_DECLARE_TR_FUNCTIONS(Verdicts)
};
using survey::BandVerdict;
} // namespace

QString verdict_word(BandVerdict verdict) {
    switch (verdict) {
    case BandVerdict::worthwhile:
        return Verdicts::tr("worth using");
    case BandVerdict::weak:
        return Verdicts::tr("weak");
    case BandVerdict::narrow:
        return Verdicts::tr("narrow");
    case BandVerdict::very_weak:
        return Verdicts::tr("very weak");
    case BandVerdict::edge_of_range:
        return Verdicts::tr("edge of range");
    case BandVerdict::voltage_exceeded:
        return Verdicts::tr("over the rating");
    case BandVerdict::out_of_reach:
        return Verdicts::tr("out of reach");
    case BandVerdict::not_established:
        return Verdicts::tr("not established");
    }
    return {};
}

QString verdict_symbol(BandVerdict verdict) {
    switch (verdict) {
    case BandVerdict::worthwhile:
        return QStringLiteral("\u2713"); // check mark
    case BandVerdict::weak:
        return QStringLiteral("\u25B7"); // open triangle, to the right
    case BandVerdict::narrow:
        return QStringLiteral("\u2194"); // double arrow
    case BandVerdict::very_weak:
        return QStringLiteral("\u25BD"); // open triangle, down
    case BandVerdict::edge_of_range:
        return QStringLiteral("\u25E7"); // half square
    case BandVerdict::voltage_exceeded:
        return QStringLiteral("\u25B2"); // filled triangle
    case BandVerdict::out_of_reach:
        return QStringLiteral("\u2715"); // cross
    case BandVerdict::not_established:
        return QStringLiteral("\u25C7"); // open diamond
    }
    return {};
}

bool forbids(BandVerdict verdict) {
    return verdict == BandVerdict::voltage_exceeded || verdict == BandVerdict::out_of_reach ||
           verdict == BandVerdict::not_established;
}

QString verdict_sentences(const survey::BandRow& row) {
    QString text = QString::fromStdString(row.verdict_text);
    for (const survey::Reason& reason : row.further) {
        text += QStringLiteral(". ") + QString::fromStdString(reason.text);
    }
    return text + QLatin1Char('.');
}

} // namespace loopwright::models

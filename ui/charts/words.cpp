#include "charts/words.hpp"

#include "charts/label_placer.hpp"

#include <QFontMetricsF>

#include <algorithm>

namespace loopwright::charts {

namespace {

constexpr double apart_px = 3.0;

class Arranger {
public:
    Arranger(const models::ChartContent& content, const PlotGeometry& geometry, const Appearance& look)
        : content_(content), geometry_(geometry), metrics_(look.font),
          placer_(geometry.area.adjusted(apart_px, 1.0, -apart_px, -1.0)) {}

    void avoid(const QList<QList<QPolygonF>>& pieces) {
        for (const QList<QPolygonF>& curve : pieces) {
            for (const QPolygonF& piece : curve) {
                placer_.avoid(piece);
            }
        }
    }
    void bands(const QString& focus_band);
    void hatching();
    void limits();
    void curves(const QList<QList<QPolygonF>>& pieces);
    void zones();
    [[nodiscard]] const QList<Word>& words() const { return words_; }

private:
    [[nodiscard]] QSizeF size_of(const QString& text) const {
        return {metrics_.horizontalAdvance(text) + 2.0, metrics_.height()};
    }
    [[nodiscard]] std::optional<double> y_of(const models::Limit& limit) const;
    [[nodiscard]] bool band_name(const models::BandStripe& band, bool strong);
    [[nodiscard]] QList<QRectF> beside_curve(const QPolygonF& piece, const QSizeF& size) const;
    const models::ChartContent& content_;
    const PlotGeometry& geometry_;
    QFontMetricsF metrics_;
    LabelPlacer placer_;
    QList<Word> words_;
};

bool Arranger::band_name(const models::BandStripe& band, bool strong) {
    const double centre =
        (geometry_.px_of_frequency(band.low_Hz) + geometry_.px_of_frequency(band.high_Hz)) / 2.0;
    if (centre < geometry_.area.left() || centre > geometry_.area.right()) {
        return false;
    }
    const QSizeF size = size_of(band.name) + QSizeF(strong ? 6.0 : 0.0, 0.0);
    QRectF rect(QPointF(centre - size.width() / 2.0, geometry_.area.top() - size.height() - 1.0), size);
    rect.moveLeft(std::clamp(rect.left(), geometry_.area.left() + 1.0,
                             std::max(geometry_.area.left() + 1.0, geometry_.area.right() - size.width())));
    const bool collides = std::any_of(words_.begin(), words_.end(), [&](const Word& word) {
        return word.rect.adjusted(-1.0, 0.0, 1.0, 0.0).intersects(rect);
    });
    if (!collides) {
        words_.append({Word::Kind::band, rect, band.name, false, strong, std::nullopt});
    }
    return !collides;
}

void Arranger::bands(const QString& focus_band) {
    for (const models::BandStripe& band : content_.bands) {
        if (band.name == focus_band) {
            static_cast<void>(band_name(band, true));
        }
    }
    for (const models::BandStripe& band : content_.bands) {
        if (band.name != focus_band) {
            static_cast<void>(band_name(band, false));
        }
    }
}

/// Height of a limit on paper; nothing where it is out of sight.
std::optional<double> Arranger::y_of(const models::Limit& limit) const {
    const double y = geometry_.px_of_y(position_on_scale(content_.scale, limit.value_si));
    const bool seen = y >= geometry_.area.top() - 1.0 && y <= geometry_.area.bottom() + 1.0;
    return seen ? std::optional(y) : std::nullopt;
}

/// What the lines of the limits and their hatching cover is taken: no words cross it.
void Arranger::hatching() {
    constexpr double line_px = 1.0;
    for (const models::Limit& limit : content_.limits) {
        if (const auto y = y_of(limit)) {
            const double above = limit.hurts == models::Side::above ? hatch_px : line_px;
            const double below = limit.hurts == models::Side::below ? hatch_px : line_px;
            placer_.take(QRectF(QPointF(geometry_.area.left(), *y - above),
                                QPointF(geometry_.area.right(), *y + below)));
        }
    }
}

void Arranger::limits() {
    const QRectF& area = geometry_.area;
    for (const models::Limit& limit : content_.limits) {
        const auto y = y_of(limit);
        if (!y) {
            continue;
        }
        const QSizeF size = size_of(limit.words);
        const double above = *y - size.height() - apart_px, below = *y + apart_px;
        // On the side that does not hurt first; beyond the hatching on the other.
        const bool below_first = limit.hurts == models::Side::above;
        const double beyond = limit.hurts == models::Side::neither ? 0.0 : hatch_px;
        QList<QRectF> candidates;
        for (const double top :
             {below_first ? below : above, below_first ? above - beyond : below + beyond}) {
            for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
                const double left =
                    area.left() + apart_px + share * (area.width() - size.width() - 2 * apart_px);
                candidates.append(QRectF(QPointF(left, top), size));
            }
        }
        words_.append(
            {Word::Kind::limit, placer_.place(candidates), limit.words, false, false, std::nullopt});
    }
}

QList<QRectF> Arranger::beside_curve(const QPolygonF& piece, const QSizeF& size) const {
    QList<QRectF> candidates;
    const QPointF end = piece.last();
    const double half = size.height() / 2.0;
    if (end.x() + apart_px + size.width() <= geometry_.area.right() - apart_px) {
        candidates.append(QRectF(QPointF(end.x() + apart_px, end.y() - half), size));
    }
    // From the end backward, above and below the curve, near and a little further off.
    for (const double share : {1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1}) {
        const QPointF at = piece[static_cast<qsizetype>(share * static_cast<double>(piece.size() - 1))];
        for (const double off : {2.0, 9.0, 16.0}) {
            for (const double left : {at.x() - size.width(), at.x() - size.width() / 2.0, at.x()}) {
                candidates.append(QRectF(QPointF(left, at.y() - size.height() - off), size));
                candidates.append(QRectF(QPointF(left, at.y() + off), size));
            }
        }
    }
    return candidates;
}

void Arranger::curves(const QList<QList<QPolygonF>>& pieces) {
    for (qsizetype i = 0; i < pieces.size(); ++i) {
        if (pieces[i].isEmpty()) {
            continue;
        }
        const QString& text = content_.curves[static_cast<std::size_t>(i)].label;
        const QSizeF size = size_of(text) + QSizeF(sample_px + apart_px, 0.0);
        // The last piece long enough to be recognised, else the last.
        const auto longest =
            std::max_element(pieces[i].begin(), pieces[i].end(),
                             [](const QPolygonF& a, const QPolygonF& b) { return a.size() < b.size(); });
        const QPolygonF& piece = pieces[i].last().size() > 3 ? pieces[i].last() : *longest;
        words_.append({Word::Kind::curve, placer_.place(beside_curve(piece, size)), text, false, false,
                       static_cast<std::size_t>(i)});
    }
}

void Arranger::zones() {
    const QRectF& area = geometry_.area;
    for (const models::Zone& zone : content_.zones) {
        const double left = std::max(geometry_.px_of_frequency(zone.from_Hz), area.left());
        const double right = std::min(geometry_.px_of_frequency(zone.to_Hz), area.right());
        QSizeF size = size_of(zone.words);
        const bool upright = right - left < size.width() + 2.0 * apart_px;
        if (upright) {
            size.transpose();
        }
        if (right - left < size.width() || area.height() < size.height()) {
            continue;
        }
        QList<QRectF> candidates;
        for (const double across : {0.5, 0.0, 1.0}) {
            for (int step = 20; step >= 0; --step) {
                const double down = 0.05 * step;
                candidates.append(
                    QRectF(QPointF(left + across * (right - left - size.width()),
                                   area.top() + down * (area.height() - size.height() - apart_px)),
                           size));
            }
        }
        LabelPlacer trial = placer_;
        const QRectF place = trial.place(candidates);
        if (trial.last_is_free()) {
            placer_ = trial;
            words_.append({Word::Kind::zone, place, zone.words, upright, false, std::nullopt});
        }
    }
}

} // namespace

QList<Word> arrange_words(const models::ChartContent& content, const PlotGeometry& geometry,
                          const QList<QList<QPolygonF>>& pieces, const Appearance& look,
                          const QString& focus_band) {
    Arranger arranger(content, geometry, look);
    arranger.avoid(pieces);
    arranger.bands(focus_band);
    arranger.hatching();
    arranger.curves(pieces);
    arranger.limits();
    arranger.zones();
    return arranger.words();
}

} // namespace loopwright::charts

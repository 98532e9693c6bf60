#include "charts/vswr_frame.hpp"

#include "models/quantity_words.hpp"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loopwright::charts {

namespace {

struct VswrFrameText {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

constexpr double frame_pad_px = 4.0, tick_every_px = 56.0, hertz_per_kHz = 1e3;
constexpr int most_x_ticks = 9;

QRectF room_below(const QRectF& room, const QString& words, const Appearance& look) {
    const double width = room.width() - 2.0 * frame_pad_px;
    const double height =
        QFontMetricsF(look.font).boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, words).height() +
        frame_pad_px;
    return {room.left() + frame_pad_px, room.bottom() - height, width, height - frame_pad_px / 2.0};
}

Frame frame_in(const QRectF& room, const QRectF& below, const VswrWords& words, const Span& offsets_kHz,
               const Appearance& look) {
    const double line = QFontMetricsF(look.font).height();
    const QRectF space = room.adjusted(2.0, line + 6.0, 0.0, below.top() - room.bottom());
    const int most = std::clamp(static_cast<int>(space.width() / tick_every_px), 2, most_x_ticks);
    std::vector<Tick> vswr;
    for (const double value : {1.0, 1.5, 2.0, 3.0, 5.0, VswrFrame::highest}) {
        vswr.push_back({value, QString::number(value)});
    }
    FrameAxis x{offsets_kHz, linear_ticks(offsets_kHz, most),
                VswrFrameText::tr("Offset from %1, kHz").arg(words.offset_from)};
    x.shorter_title = VswrFrameText::tr("Offset, kHz");
    return {space,
            look,
            x,
            {{0.0, std::log10(VswrFrame::highest)}, ticks_at_log10(vswr), VswrFrameText::tr("VSWR")}};
}

} // namespace

VswrFrame::VswrFrame(VswrWords words, const Span& offsets_kHz, const QRectF& room, const Appearance& look)
    : words_(std::move(words)), room_(room), below_(room_below(room, words_.below, look)),
      frame_(frame_in(room, below_, words_, offsets_kHz, look)) {}

double VswrFrame::px_of_offset(double offset_Hz) const {
    return frame_.px_of_x(offset_Hz / hertz_per_kHz);
}

QPointF VswrFrame::at(double offset_Hz, double vswr) const {
    return frame_.at(offset_Hz / hertz_per_kHz, std::log10(std::clamp(vswr, 1.0, highest)));
}

void VswrFrame::paint(QPainter& painter, Lettering& lettering, const Appearance& look) const {
    write_title(lettering, room_, words_.title, words_.shorter_title);
    frame_.paint(painter, look);
    frame_.write(lettering);
    lettering.write_wrapped(below_, words_.below, Qt::AlignHCenter | Qt::AlignTop);
}

void VswrFrame::paint_limit_line(QPainter& painter, Lettering& lettering, double limit,
                                 const Appearance& look) const {
    if (limit < highest) {
        lettering.take(paint_limit(painter, area(), at(0.0, limit).y(), true, look));
    }
}

void VswrFrame::write_limit(Lettering& lettering, double limit) const {
    const QString text = VswrFrameText::tr("VSWR %1").arg(models::plain_number(limit, 3));
    const QSizeF size = lettering.size_of(text);
    const double y = at(0.0, limit).y() + 2.0;
    lettering.write_at({QRectF(QPointF(area().left() + 3.0, y), size),
                        QRectF(QPointF(area().right() - size.width() - 3.0, y), size)},
                       text, Tone::plain, true);
}

} // namespace loopwright::charts

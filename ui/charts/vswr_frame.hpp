#pragma once
// What every curve of VSWR over an offset in frequency is drawn in: VSWR from 1 to 10 on a logarithmic scale,
// offsets in kHz, words below.
#include "charts/frame.hpp"

namespace loopwright::charts {

struct VswrWords {
    QString title, shorter_title; ///< of the figure; the shorter one where the first does not fit
    QString offset_from;          ///< what offsets are counted from: "7.074 MHz"
    QString below;                ///< below the axes, broken into lines
};

class VswrFrame {
public:
    /// Beyond it a curve says nothing more.
    static constexpr double highest = 10.0;

    VswrFrame(VswrWords words, const Span& offsets_kHz, const QRectF& room, const Appearance& look);

    [[nodiscard]] const QRectF& area() const { return frame_.area(); }
    [[nodiscard]] double px_of_offset(double offset_Hz) const;
    /// What is outside the scale lies at its end.
    [[nodiscard]] QPointF at(double offset_Hz, double vswr) const;
    /// Title, axes, and what stands below them.
    void paint(QPainter& painter, Lettering& lettering, const Appearance& look) const;
    void paint_limit_line(QPainter& painter, Lettering& lettering, double limit,
                          const Appearance& look) const;
    void write_limit(Lettering& lettering, double limit) const;

private:
    VswrWords words_;
    QRectF room_, below_;
    Frame frame_;
};

} // namespace loopwright::charts

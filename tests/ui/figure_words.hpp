#pragma once
// What every figure has to hold: its words lie inside it and none covers another.
#include "charts/figure.hpp"

#include <QImage>
#include <QPainter>
#include <gtest/gtest.h>

namespace loopwright::test {

/// Paints at a size in pixels; the words as painted.
[[nodiscard]] inline QList<charts::FigureWord> painted_words(const charts::Figure& figure, const QSize& size,
                                                             const charts::Appearance& look) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(look.paper);
    QPainter painter(&image);
    return figure.paint(painter, QRectF(image.rect()), look);
}

inline void expect_words_apart(const charts::Figure& figure, const QSize& size) {
    const auto words = painted_words(figure, size, charts::paper_appearance());
    const QRectF room = QRectF(QPointF(0, 0), QSizeF(size)).adjusted(-0.5, -0.5, 0.5, 0.5);
    for (qsizetype i = 0; i < words.size(); ++i) {
        EXPECT_TRUE(room.contains(words[i].rect))
            << words[i].text.toStdString() << " outside at " << size.width();
        for (qsizetype j = i + 1; j < words.size(); ++j) {
            const QRectF common = words[i].rect.intersected(words[j].rect);
            EXPECT_FALSE(common.width() > 1.0 && common.height() > 1.0)
                << words[i].text.toStdString() << " over " << words[j].text.toStdString() << " at "
                << size.width();
        }
    }
}

[[nodiscard]] inline bool has_word(const QList<charts::FigureWord>& words, const QString& part) {
    return std::any_of(words.begin(), words.end(),
                       [&](const charts::FigureWord& word) { return word.text.contains(part); });
}

} // namespace loopwright::test

#pragma once
// Every text that a window shows, says to a screen reader, or paints.
#include <QString>
#include <QStringList>

#include <vector>

class QWidget;

namespace loopwright::test {

struct ShownText {
    QString where; ///< class, name and kind of text: for a message
    QString text;  ///< plain, without mnemonic
};

/// Of the widget and everything in it, hidden parts too: labels, buttons, titles, tabs, cells, headings,
/// menus, tooltips, accessible names.
[[nodiscard]] std::vector<ShownText> texts_of(QWidget& top);

/// What the visible widgets in it paint as they are now, labels left out, read from pictures with lines and
/// letters: charts, cells, drawings.
[[nodiscard]] std::vector<ShownText> painted_texts(QWidget& top);

/// The letters of a picture in SVG.
[[nodiscard]] QStringList letters_of_svg(const QByteArray& svg);

} // namespace loopwright::test

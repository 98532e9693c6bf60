#pragma once
// A figure on the screen, with its menu. Fed by plain data: set_figure() with a new value on every change.
// Arrow keys or the pointer walk along its points and show their numbers.
#include "charts/chart_picture.hpp"
#include "charts/figure.hpp"

#include <QWidget>

#include <memory>

class QAction;
class QMenu;
class QToolButton;

namespace loopwright::charts {

class FigureWidget : public QWidget {
    Q_OBJECT
public:
    explicit FigureWidget(QWidget* parent = nullptr);
    ~FigureWidget() override;

    /// Null: nothing to draw yet.
    void set_figure(std::shared_ptr<const Figure> figure);
    [[nodiscard]] const std::shared_ptr<const Figure>& figure() const { return figure_; }
    /// Greyed: the figure belongs to an older state of the design.
    void set_stale(bool stale);
    [[nodiscard]] bool stale() const { return stale_; }
    /// As last painted, for tests.
    [[nodiscard]] const QList<FigureWord>& words() const { return words_; }
    /// The point walked to, -1: none.
    [[nodiscard]] qsizetype pointed() const { return pointed_; }
    [[nodiscard]] QSize sizeHint() const override;
    /// The owner can give it the whole page: a menu entry and a double click ask for it.
    void set_enlargeable();
    void set_enlarged(bool enlarged);
    /// Its numbers can be had as a table: a menu entry asks for it.
    void set_table(bool offered);

public Q_SLOTS:
    /// A picture on white paper to the clipboard.
    void copy();

Q_SIGNALS:
    void export_wanted();
    void table_wanted();
    void enlarge_toggled();

protected:
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    void point_to(qsizetype point);
    std::shared_ptr<const Figure> figure_;
    Appearance look_;
    QToolButton* button_;
    QMenu* menu_;
    QAction* enlarge_ = nullptr; ///< none: not offered
    QAction* table_;
    QList<FigureWord> words_;
    qsizetype pointed_ = -1;
    bool stale_ = false;
};

} // namespace loopwright::charts

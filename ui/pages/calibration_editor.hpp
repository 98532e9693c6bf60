#pragma once
// The calibration: date, note, and pairs of a dial reading and the frequency the loop was then in resonance
// at; each judged by the others, and where the next one would tell most.
#include "jobs/dial_job.hpp"
#include "pages/context.hpp"

#include <QWidget>

#include <functional>
#include <memory>

class QLabel;

namespace loopwright::inputs {
class TextField;
}

namespace loopwright::pages {

class PairsEditor;

class CalibrationEditor : public QWidget {
    Q_OBJECT
public:
    explicit CalibrationEditor(const Context& context, QWidget* parent = nullptr);
    /// What the points tell; null: not computed yet. Of an older state of the points: only where they are the
    /// same.
    void set_result(const std::shared_ptr<const jobs::DialResult>& result);
    [[nodiscard]] PairsEditor& pairs() { return *pairs_; }

private:
    void add_point(double reading, double frequency_Hz, const QString& text);
    void change_point(int row, int column, const QString& text);
    void remove_points(const QList<int>& rows);
    void add_text(const QString& text, const QString& what, const QString& where);
    void read_file();
    void edit(const QString& what, const std::function<void(design::Calibration&)>& change,
              const QString& merge_key = {});
    void refresh();
    void show_words();
    Context context_;
    std::shared_ptr<const jobs::DialResult> result_;
    PairsEditor* pairs_;
    inputs::TextField* date_;
    inputs::TextField* note_;
    QLabel* next_;
    QLabel* fitted_;
};

} // namespace loopwright::pages

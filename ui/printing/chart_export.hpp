#pragma once
// Charts to files, with a dialog for format, size and what to write.
#include "charts/chart_picture.hpp"
#include "models/chart_content.hpp"

#include <QDialog>
#include <QStringList>

#include <memory>
#include <vector>

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace loopwright::printing {

struct ChartExport {
    std::vector<models::ChartContent> charts;
    charts::Origin origin{};
    charts::PictureSize size{};
    QString folder{};
    QString stem{};                                 ///< file names are <stem>-<chart>.<ending>
    QString ending = QStringLiteral("png");         ///< png, svg or pdf
    std::shared_ptr<const charts::Figure> figure{}; ///< then this one alone, no charts
};

/// The names that an export would write, in the order of its charts.
[[nodiscard]] QStringList file_names(const ChartExport& what);

/// Writes them. The first file that cannot be written stops it: then its name stands in `failed`.
[[nodiscard]] QStringList write_charts(const ChartExport& what, QString& failed);

/// A title as part of a file name: letters and digits of any script, the rest as single hyphens.
[[nodiscard]] QString file_stem(const QString& title);

class ChartExportDialog : public QDialog {
    Q_OBJECT
public:
    /// chosen: the one chart that is marked at first, -1: all.
    ChartExportDialog(const ChartExport& start, int chosen, charts::Span shown, QWidget* parent = nullptr);
    [[nodiscard]] ChartExport result_wanted() const;

private:
    void build_charts(QFormLayout& form, int chosen);
    void build_size(QFormLayout& form);
    void build_place(QFormLayout& form);
    void choose_folder();
    void update_state();
    ChartExport start_;
    charts::Span shown_;
    std::vector<QCheckBox*> marks_;
    QComboBox* ending_;
    QComboBox* range_;
    QDoubleSpinBox* width_;
    QDoubleSpinBox* height_;
    QSpinBox* dpi_;
    QLineEdit* folder_;
    QPushButton* write_ = nullptr;
};

} // namespace loopwright::printing

#pragma once
// What is my loop, and what does it do right now? Parameters, the drawing to scale, the headline numbers.
#include "pages/context.hpp"

#include <QWidget>

class QSplitter;

namespace loopwright::pages {

class CouplingPanel;
class HeadlinePanel;

class BuildPage : public QWidget {
    Q_OBJECT
public:
    explicit BuildPage(const Context& context, QWidget* parent = nullptr);
    ~BuildPage() override;
    [[nodiscard]] const HeadlinePanel& headlines() const { return *headlines_; }
    [[nodiscard]] CouplingPanel& match() { return *match_; }

Q_SIGNALS:
    void explanation_wanted(const QString& id);

private:
    [[nodiscard]] QWidget* build_drawing();
    Context context_;
    QSplitter* splitter_;
    HeadlinePanel* headlines_;
    CouplingPanel* match_ = nullptr;
};

} // namespace loopwright::pages

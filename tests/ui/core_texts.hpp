#pragma once
// What is English wherever it stands (docs/decisions/0007-language.md): sentences that the core makes, and
// names that design files hold.
#include "base/notice.hpp"
#include "design/design.hpp"

#include <QSet>
#include <QString>

namespace loopwright::app {
class MainWindow;
}
namespace loopwright::report {
struct Page;
}
namespace loopwright::survey {
struct Card;
}

namespace loopwright::test {

class CoreTexts {
public:
    /// Names of the core's lists: bands, emissions, metals, soils, limits, sizes, capacitors, units.
    CoreTexts();
    /// What a person has typed.
    void add(const design::Design& design);
    void add(const base::Notices& notices);
    void add(const survey::Card& card);
    void add(const report::Page& page);
    /// What the jobs of a window have answered.
    void add(app::MainWindow& window);
    /// Where the numbers of its point come from.
    void add_explanations(app::MainWindow& window);
    void add(const QString& text);
    void add(const std::string& text) { add(QString::fromStdString(text)); }

    /// The words with narrow letters that are left when those texts and units are taken out. A line that a
    /// text of the core was broken into or shortened to, of more than one word, is of the core too.
    [[nodiscard]] QStringList foreign_words(const QString& shown) const;

private:
    QSet<QString> texts_;
    QSet<QString> words_; ///< units and single letters of formulas
};

} // namespace loopwright::test

#pragma once
// A second design laid over the first, or none. Held apart from the document: it is looked at, not edited.
#include "design/design.hpp"

#include <QObject>
#include <QString>

#include <optional>

namespace loopwright::session {

class Comparison : public QObject {
    Q_OBJECT
public:
    explicit Comparison(QObject* parent = nullptr);
    [[nodiscard]] const std::optional<design::Design>& design() const { return design_; }
    /// What curves and columns of the second design are called.
    [[nodiscard]] const QString& name() const { return name_; }
    void set(const design::Design& design, const QString& name);
    void clear();

Q_SIGNALS:
    void changed();

private:
    std::optional<design::Design> design_;
    QString name_;
};

} // namespace loopwright::session

#include "session/comparison.hpp"

namespace loopwright::session {

Comparison::Comparison(QObject* parent) : QObject(parent) {}

void Comparison::set(const design::Design& design, const QString& name) {
    design_ = design;
    name_ = name;
    Q_EMIT changed();
}

void Comparison::clear() {
    if (design_) {
        design_.reset();
        name_.clear();
        Q_EMIT changed();
    }
}

} // namespace loopwright::session

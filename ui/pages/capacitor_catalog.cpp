#include "pages/capacitor_catalog.hpp"

#include "base/error.hpp"

#include <QFile>

namespace loopwright::pages {

namespace {

std::vector<document::CatalogCapacitor> read_catalog() {
    QFile file(QStringLiteral(":/designs/capacitors.json"));
    if (!file.open(QIODevice::ReadOnly)) {
        return {};
    }
    try {
        return document::read_capacitor_catalog(file.readAll().toStdString(), "capacitors.json");
    } catch (const base::InputError&) {
        return {};
    }
}

} // namespace

const std::vector<document::CatalogCapacitor>& capacitor_catalog() {
    static const std::vector<document::CatalogCapacitor> all = read_catalog();
    return all;
}

} // namespace loopwright::pages

#include "pages/standing.hpp"

#include <QCoreApplication>

namespace loopwright::pages {

namespace {
struct Standings {
    Q_DECLARE_TR_FUNCTIONS(Standings)
};
} // namespace

QString standing_mark(models::Standing standing) {
    switch (standing) {
    case models::Standing::plain:
        return {};
    case models::Standing::good:
        return QStringLiteral("\u2713 ");
    case models::Standing::doubtful:
        return QStringLiteral("\u25B3 ");
    case models::Standing::bad:
        return QStringLiteral("\u25B2 ");
    }
    return {};
}

QString severity_mark(base::Severity severity) {
    switch (severity) {
    case base::Severity::information:
        return QStringLiteral("\u2022 ");
    case base::Severity::caution:
        return QStringLiteral("\u25B3 ") + Standings::tr("Caution: ");
    case base::Severity::not_established:
        return QStringLiteral("\u25C7 ") + Standings::tr("Not established: ");
    case base::Severity::hazard:
        return QStringLiteral("\u25B2 ") + Standings::tr("Hazard: ");
    }
    return {};
}

} // namespace loopwright::pages

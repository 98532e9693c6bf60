#include "loop/detail/interactions.hpp"

#include "loop/detail/array_kernels.hpp"

namespace loopwright::loop::detail {
namespace {

using Eigen::Index;

Eigen::MatrixXd columns_of(const std::vector<Span>& spans) {
    Eigen::MatrixXd columns(static_cast<Index>(spans.size()), static_cast<Index>(span_columns));
    for (std::size_t i = 0; i < spans.size(); ++i) {
        const auto row = static_cast<Index>(i);
        Index column = 0;
        const auto put = [&](const geometry::Vector3& v) {
            columns(row, column++) = v.x;
            columns(row, column++) = v.y;
            columns(row, column++) = v.z;
        };
        for (const Sample& sample : spans[i].samples) {
            put(sample.point);
            put(sample.tangent);
        }
        put(spans[i].middle);
        columns(row, column) = spans[i].length_m();
    }
    return columns;
}

} // namespace

Interactions interactions(const geometry::WirePath& path, const std::vector<Span>& spans, double radius_m) {
    StaticInteraction pair(path, radius_m);
    const std::size_t whole = spans.size();
    const std::size_t count = path.reversible() ? whole / 2 : whole;
    const auto n = static_cast<Index>(count);
    Interactions result{Eigen::MatrixXd(n, n), Eigen::MatrixXd(n, n)};
    const Eigen::MatrixXd columns = columns_of(spans);
    Eigen::ArrayX3d sums(static_cast<Index>(whole), 3);
    const PairRow row{sums.col(0).data(), sums.col(1).data(), sums.col(2).data()};
    // Of kernels averaged round the tube less is said nearer than ten radii.
    const double margin = 10 * radius_m;
    for (std::size_t i = 0; i < count; ++i) {
        // From the span itself to its image: with the images of those between, each pair once.
        const std::size_t end = path.reversible() ? whole - i : whole;
        sum_pairs(columns.data(), whole, i, i, end, 2 * radius_m * radius_m, margin, row);
        for (std::size_t j = i; j < end; ++j) {
            if (row.clearance_m2[j] <= 0) {
                const PairIntegral near = pair.near(spans[i], spans[j], {row.scalar_m[j], row.vector_m[j]});
                row.scalar_m[j] = near.scalar_m;
                row.vector_m[j] = near.vector_m;
            }
        }
        const auto at = static_cast<Index>(i);
        for (std::size_t j = i; j < count; ++j) {
            const std::size_t image = whole - 1 - j;
            const bool twice = path.reversible();
            const auto other = static_cast<Index>(j);
            result.scalar_m(other, at) = result.scalar_m(at, other) =
                row.scalar_m[j] - (twice ? row.scalar_m[image] : 0.0);
            result.vector_m(other, at) = result.vector_m(at, other) =
                row.vector_m[j] + (twice ? row.vector_m[image] : 0.0);
        }
    }
    return result;
}

} // namespace loopwright::loop::detail

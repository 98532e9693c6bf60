// The preparation of a geometry against the integrals it stands for, taken pair by pair over random designs.
#include "geometry/winding.hpp"
#include "loop/detail/array_kernels.hpp"
#include "loop/detail/closed_form_parts.hpp"
#include "loop/detail/interactions.hpp"
#include "loop/detail/loop_series.hpp"
#include "units/constants.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace loopwright::loop::detail {
namespace {

using units::metres;
using units::constants::pi;

struct RandomLoop {
    geometry::Winding winding;
    double radius_m = 0;
};

/// Circles, polygons and rectangles of one turn, stacks and spirals of several; conductors from thin to
/// thick.
class RandomLoops {
public:
    RandomLoop next() {
        RandomLoop loop;
        geometry::Winding& w = loop.winding;
        const double size = between(0.3, 4);
        w.size = metres(size);
        switch (pick(0, 2)) {
        case 0:
            break;
        case 1:
            w.outline = geometry::Outline::polygon;
            w.sides = pick(3, 12);
            w.measure = geometry::Measure::across_corners;
            w.corner_down = pick(0, 1) == 1;
            break;
        default:
            w.outline = geometry::Outline::rectangle;
            w.width = metres(size);
            w.height = metres(between(0.3, 1) * size);
        }
        loop.radius_m = size * std::exp(between(std::log(2e-4), std::log(2e-2)));
        w.gap = metres(between(0.005, 0.05) * size);
        w.turns = pick(0, 2) == 0 ? pick(2, 3) : 1;
        if (w.turns > 1) {
            loop.radius_m = std::min(loop.radius_m, 0.005 * size);
            w.arrangement = pick(0, 1) == 0 ? geometry::Arrangement::stack : geometry::Arrangement::spiral;
            w.spacing = metres(between(3, 6) * loop.radius_m);
            w.lead = metres(3 * loop.radius_m);
        }
        return loop;
    }
    double between(double low, double high) { return std::uniform_real_distribution<>(low, high)(engine_); }
    int pick(int low, int high) { return std::uniform_int_distribution<>(low, high)(engine_); }

private:
    std::mt19937 engine_{20261126};
};

/// The matrices of interactions(), every pair by itself.
Interactions pair_by_pair(const geometry::WirePath& path, const std::vector<Span>& spans, double radius_m) {
    StaticInteraction pair(path, radius_m);
    const std::size_t whole = spans.size();
    const std::size_t count = path.reversible() ? whole / 2 : whole;
    const auto n = static_cast<Eigen::Index>(count);
    Interactions result{Eigen::MatrixXd(n, n), Eigen::MatrixXd(n, n)};
    for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = i; j < count; ++j) {
            PairIntegral sum = pair(spans[i], spans[j]);
            if (path.reversible()) {
                const PairIntegral image = pair(spans[i], spans[whole - 1 - j]);
                sum.scalar_m -= image.scalar_m;
                sum.vector_m += image.vector_m;
            }
            const auto row = static_cast<Eigen::Index>(i);
            const auto column = static_cast<Eigen::Index>(j);
            result.scalar_m(row, column) = result.scalar_m(column, row) = sum.scalar_m;
            result.vector_m(row, column) = result.vector_m(column, row) = sum.vector_m;
        }
    }
    return result;
}

double largest_difference(const Eigen::MatrixXd& a, const Eigen::MatrixXd& b) {
    return (a - b).cwiseAbs().maxCoeff() / b.cwiseAbs().maxCoeff();
}

} // namespace

TEST(FastPath, MatricesAreThoseOfThePairs) {
    RandomLoops loops;
    for (int trial = 0; trial < 40; ++trial) {
        const RandomLoop loop = loops.next();
        const auto path = geometry::wire_path(loop.winding);
        const auto spans = cut(path, cutting_for(loop.winding));
        const Interactions fast = interactions(path, spans, loop.radius_m);
        const Interactions direct = pair_by_pair(path, spans, loop.radius_m);
        EXPECT_LT(largest_difference(fast.scalar_m, direct.scalar_m), 1e-11) << trial;
        EXPECT_LT(largest_difference(fast.vector_m, direct.vector_m), 1e-11) << trial;
    }
}

// The second half of a reversible path is made from the first: it lies where the path says.
TEST(FastPath, SpansLieOnThePath) {
    RandomLoops loops;
    for (int trial = 0; trial < 40; ++trial) {
        const RandomLoop loop = loops.next();
        geometry::Placement placement;
        placement.tilt = units::degrees(loops.between(0, 90));
        const auto path = geometry::wire_path(loop.winding, placement);
        double end_m = 0;
        for (const Span& span : cut(path, cutting_for(loop.winding))) {
            EXPECT_NEAR(span.from_m, end_m, 1e-12 * path.length_m()) << trial;
            end_m = span.to_m;
            const geometry::Piece& piece = path.pieces().at(span.piece);
            EXPECT_NEAR(path.begin_m(span.piece) + span.share_from * piece.length_m(), span.from_m,
                        1e-12 * path.length_m());
            EXPECT_NEAR(path.begin_m(span.piece) + span.share_to * piece.length_m(), span.to_m,
                        1e-12 * path.length_m());
            for (const Sample& sample : span.samples) {
                EXPECT_LT(norm(sample.point - path.point(sample.s_m)), 1e-9 * path.length_m()) << trial;
                EXPECT_LT(norm(sample.tangent - path.tangent(sample.s_m)), 1e-8) << trial;
                EXPECT_NEAR(sample.weight_m, 0.5 * span.length_m(), 1e-12 * path.length_m());
            }
        }
        EXPECT_NEAR(end_m, path.length_m(), 1e-12 * path.length_m());
    }
}

// Power in the far field by the series in k, against the plain sum of exp(j k n.r) over the same path for the
// uniform current: the series ends at (k r)^5.
TEST(FastPath, FarFieldOfTheUniformCurrentIsThatOfThePath) {
    RandomLoops loops;
    for (int trial = 0; trial < 40; ++trial) {
        const RandomLoop loop = loops.next();
        const auto path = geometry::wire_path(loop.winding);
        const geometry::Vector3 n =
            geometry::unit({loops.between(-1, 1), loops.between(-1, 1), loops.between(-1, 1)});
        const auto prepared = prepare_loop(path, loop.radius_m, 0, {n}, {}, cutting_for(loop.winding));
        const double k = 2 * pi * 0.1 / path.length_m();
        std::complex<double> x, y, z;
        for (const geometry::Piece& piece : path.pieces()) {
            constexpr int steps = 2000; // middle points: 1e-6 of the field
            for (int i = 0; i < steps; ++i) {
                const Place at = place_on(piece, (i + 0.5) / steps);
                const auto wave = std::polar(piece.length_m() / steps, k * dot(n, at.point));
                const geometry::Vector3 across = at.tangent - dot(at.tangent, n) * n;
                x += across.x * wave;
                y += across.y * wave;
                z += across.z * wave;
            }
        }
        const double direct = std::norm(x) + std::norm(y) + std::norm(z);
        const double most = std::pow(k * loop.winding.turns * path.length_m() * path.length_m(), 2) / 1e3;
        EXPECT_NEAR(prepared.directions.front().power(k, {1, 0, 0}), direct, 2e-3 * direct + 1e-6 * most)
            << trial;
    }
}

// Power sums over pairs of nodes, against the double loop over all nodes, images included.
TEST(FastPath, SumsOfPowersAreThoseOfTheDoubleLoop) {
    RandomLoops loops;
    constexpr std::size_t half = 23, count = 2 * half, powers = 7;
    Eigen::ArrayXXd nodes = Eigen::ArrayXXd::Zero(count, node_columns);
    for (Eigen::Index i = 0; i < Eigen::Index(half); ++i) {
        for (Eigen::Index c = 0; c < Eigen::Index(node_columns); ++c) {
            nodes(i, c) = loops.between(-1, 1);
        }
        nodes.row(i + Eigen::Index(half)) = nodes.row(i);
        for (const Eigen::Index turned : {0, 1, 5, 8, 9}) { // a half turn about z, run backwards
            nodes(i + Eigen::Index(half), turned) *= -1;
        }
    }
    std::array<double, powers * PairBlock::current_products> current{};
    std::array<double, powers * PairBlock::charge_products> charge{};
    PairBlock block;
    for (std::size_t p = 0; p < half; ++p) {
        if (block.size + half > PairBlock::capacity) {
            sum_powers(block, true, powers, current.data(), charge.data());
            block.size = 0;
        }
        add_pairs(block, nodes.data(), count, half, p, p, half, 0.02);
    }
    sum_powers(block, true, powers, current.data(), charge.data());
    for (std::size_t power = 0; power < powers; ++power) {
        std::array<double, PairBlock::current_products> plain_current{};
        std::array<double, PairBlock::charge_products> plain_charge{};
        for (Eigen::Index p = 0; p < Eigen::Index(count); ++p) {
            for (Eigen::Index q = 0; q < Eigen::Index(count); ++q) {
                const double distance2 = (nodes.row(p) - nodes.row(q)).head<3>().square().sum() + 0.02;
                const double r = std::pow(distance2, 0.5 * double(power));
                const double element = (nodes.row(p) * nodes.row(q)).segment<3>(3).sum();
                const std::array<double, 3> fp{1, nodes(p, 6), nodes(p, 7)};
                const std::array<double, 3> fq{1, nodes(q, 6), nodes(q, 7)};
                for (std::size_t i = 0; i < 3; ++i) {
                    for (std::size_t k = i; k < 3; ++k) {
                        plain_current[entry(i, k)] += element * r * fp[i] * fq[k];
                    }
                }
                plain_charge[0] += r * nodes(p, 8) * nodes(q, 8);
                plain_charge[1] += r * nodes(p, 8) * nodes(q, 9);
                plain_charge[2] += r * nodes(p, 9) * nodes(q, 9);
            }
        }
        const double scale = std::pow(3.5, double(power)) * count;
        for (std::size_t e = 0; e < plain_current.size(); ++e) {
            EXPECT_NEAR(2 * current[power * 6 + e], plain_current[e], 1e-12 * scale * count) << power;
        }
        for (std::size_t e = 0; e < plain_charge.size(); ++e) {
            EXPECT_NEAR(2 * charge[power * 3 + e], plain_charge[e], 1e-12 * scale * count) << power;
        }
    }
}

// Directions alike are computed once: the power there is that of each of them.
TEST(FastPath, AlikeDirectionsHaveTheSamePower) {
    RandomLoops loops;
    for (int trial = 0; trial < 20; ++trial) {
        const RandomLoop loop = loops.next();
        const auto symmetry = symmetry_of(loop.winding);
        const geometry::Vector3 n =
            geometry::unit({loops.between(-1, 1), loops.between(-1, 1), loops.between(-1, 1)});
        std::vector<geometry::Vector3> alike{n};
        if (symmetry.half_turn) {
            alike.push_back({-n.x, -n.y, n.z});
        }
        if (symmetry.mirror) {
            alike.push_back({n.x, -n.y, n.z});
        }
        const auto path = geometry::wire_path(loop.winding);
        const auto prepared = prepare_loop(path, loop.radius_m, 0, alike, {}, cutting_for(loop.winding));
        const double k = 2 * pi * 0.2 / path.length_m();
        const CurrentVector c{std::complex<double>{0.6, 0.01}, {0.4, -0.01}, {0.1, 0.02}};
        const double power = prepared.directions.front().power(k, c);
        for (const FarDirection& direction : prepared.directions) {
            EXPECT_NEAR(direction.power(k, c), power, 1e-9 * power) << trial;
        }
    }
    const auto upright = gain_directions({}, {true, true});
    EXPECT_EQ(upright.all.size(), 7U); // three axes, four of the ring
    const auto none = gain_directions({}, {});
    EXPECT_EQ(none.all.size(), 5U + ring_azimuths);
}

} // namespace loopwright::loop::detail

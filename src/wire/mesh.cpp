#include "wire/mesh.hpp"

#include "base/error.hpp"
#include "wire/detail/contact.hpp"
#include "wire/detail/grading.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::wire {

namespace {

using geometry::Vector3;

// Chosen by the convergence study (docs/theory/wire.md): charge varies over a gap's width, and at an open end
// over the wire's thickness; corners do not ask for short elements.
constexpr double gap_share = 0.2;    // element length at a gap over the gap's width
constexpr double end_radii = 2.0;    // element length at an open end over the wire's radius
constexpr int least_elements = 10;   // on any wire
constexpr double extent_share = 4.8; // 24 elements around: no element longer than a fifth of the extent

double wrapped(double s_m, double length_m) {
    const double s = std::fmod(s_m, length_m);
    return s < 0 ? s + length_m : s;
}

void add_gap(const Gap& gap, detail::Grading& grading) {
    if (!(gap.width_m > 0)) {
        return;
    }
    const double half = 0.5 * gap.width_m;
    const double at = grading.closed ? wrapped(gap.at_m, grading.length_m) : gap.at_m;
    for (const double edge : {at - half, at + half}) {
        grading.breaks_m.push_back(grading.closed ? wrapped(edge, grading.length_m) : edge);
    }
    grading.foci.push_back({at - half, at + half, gap_share * gap.width_m});
}

void add_stretches(const Wire& wire, detail::Grading& grading) {
    double s = 0;
    for (const Stretch& stretch : wire.stretches) {
        grading.breaks_m.push_back(s);
        s += stretch.piece.length_m();
    }
    if (!wire.closed) {
        const double size = end_radii * wire.radius_m;
        grading.foci.push_back({0, 0, size});
        grading.foci.push_back({s, s, size});
    }
}

/// Diagonal of the box around all wires.
double extent_of(const WireModel& model) {
    Vector3 low = model.wires.front().stretches.front().piece.point(0);
    Vector3 high = low;
    for (const Wire& wire : model.wires) {
        for (const Stretch& stretch : wire.stretches) {
            for (int i = 0; i <= 32; ++i) {
                const Vector3 p = stretch.piece.point(i / 32.0);
                low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
                high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
            }
        }
    }
    return norm(high - low);
}

double longest_element(const WireModel& model, const Wire& wire, const MeshOptions& options,
                       double extent_m) {
    double longest = 0;
    for (const Wire& each : model.wires) {
        longest = std::max(longest, each.length_m());
    }
    double size =
        std::min(longest / options.elements_around, extent_share * extent_m / options.elements_around);
    size = std::min(size, wire.length_m() / least_elements);
    return options.shortest_wavelength_m > 0 ? std::min(size, options.shortest_wavelength_m / 24) : size;
}

std::vector<double> places_of(const WireModel& model, std::size_t index, const MeshOptions& options,
                              double extent_m) {
    const Wire& wire = model.wires[index];
    detail::Grading grading;
    grading.length_m = wire.length_m();
    grading.closed = wire.closed;
    grading.refinement = options.refinement;
    grading.base_m = longest_element(model, wire, options, extent_m);
    add_stretches(wire, grading);
    for (const auto* gaps : {&model.ports, &model.loads}) {
        for (const Gap& gap : *gaps) {
            if (gap.wire == index) {
                add_gap(gap, grading);
            }
        }
    }
    return detail::graded_nodes(grading);
}

} // namespace

Mesh::Mesh(WireModel model, const MeshOptions& options) : model_(std::move(model)) {
    check(model_);
    if (options.elements_around < 3 || !(options.refinement > 0)) {
        throw base::ProgramError("mesh options out of range");
    }
    extent_m_ = extent_of(model_);
    for (std::size_t i = 0; i < model_.wires.size(); ++i) {
        add_wire(i, places_of(model_, i, options, extent_m_));
    }
    detail::refuse_contact(*this);
}

void Mesh::add_wire(std::size_t index, const std::vector<double>& places) {
    const Wire& wire = model_.wires[index];
    const std::size_t count = places.size() - 1;
    const std::size_t first = nodes_;
    first_nodes_.push_back(wire.closed ? first : no_node);
    nodes_ += wire.closed ? count : count - 1;
    wire_of_node_.resize(nodes_, index);
    std::size_t stretch = 0;
    double stretch_begin = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const double middle = 0.5 * (places[i] + places[i + 1]);
        while (middle > stretch_begin + wire.stretches[stretch].piece.length_m()) {
            stretch_begin += wire.stretches[stretch].piece.length_m();
            ++stretch;
        }
        const double whole = wire.stretches[stretch].piece.length_m();
        Element element{index, stretch, wire.stretches[stretch].conductor};
        element.share_begin = std::clamp((places[i] - stretch_begin) / whole, 0.0, 1.0);
        element.share_end = std::clamp((places[i + 1] - stretch_begin) / whole, 0.0, 1.0);
        element.begin_m = places[i];
        element.length_m = places[i + 1] - places[i];
        element.radius_m = wire.radius_m;
        if (wire.closed) {
            element.node = {first + i, first + (i + 1) % count};
        } else {
            element.node = {i == 0 ? no_node : first + i - 1, i + 1 == count ? no_node : first + i};
        }
        elements_.push_back(element);
    }
}

Vector3 Mesh::point(const Element& element, double x) const {
    const double share = element.share_begin + x * (element.share_end - element.share_begin);
    return model_.wires[element.wire].stretches[element.stretch].piece.point(share);
}
Vector3 Mesh::tangent(const Element& element, double x) const {
    const double share = element.share_begin + x * (element.share_end - element.share_begin);
    return model_.wires[element.wire].stretches[element.stretch].piece.tangent(share);
}

namespace {

/// The part of a gap (from low to high, in metres from the element's begin) that lies on an element.
void add_overlap(const Element& element, double low_m, double high_m, double width_m, NodeWeights& weights) {
    const double low = std::max(0.0, low_m);
    const double high = std::min(element.length_m, high_m);
    if (high <= low) {
        return;
    }
    const double covered = (high - low) / width_m;
    const double rising = covered * 0.5 * (low + high) / element.length_m;
    const std::array<double, 2> parts{covered - rising, rising};
    for (std::size_t side = 0; side < 2; ++side) {
        if (element.node[side] != no_node) {
            weights.push_back({element.node[side], parts[side]});
        }
    }
}

} // namespace

NodeWeights Mesh::weights_of(const Gap& gap) const {
    const Wire& wire = model_.wires.at(gap.wire);
    const double length = wire.length_m();
    const double at = wire.closed ? wrapped(gap.at_m, length) : gap.at_m;
    const double half = std::max(0.5 * gap.width_m, 1e-9 * length); // a point is a very short gap
    NodeWeights weights;
    for (const Element& element : elements_) {
        if (element.wire != gap.wire) {
            continue;
        }
        for (const double turn : {-length, 0.0, length}) {
            if (turn == 0 || wire.closed) {
                const double middle = at + turn - element.begin_m;
                add_overlap(element, middle - half, middle + half, 2 * half, weights);
            }
        }
    }
    return weights;
}

} // namespace loopwright::wire

#include "loop/detail/solver_cache.hpp"

#include "wire/wire_model.hpp"

#include <algorithm>
#include <deque>
#include <mutex>
#include <vector>

namespace loopwright::loop::detail {

namespace {

/// The last few values by key, made once each: a second thread that asks for one in the making waits for it.
template <class Key, class Value>
class Recent {
public:
    explicit Recent(std::size_t most) : most_(most) {}

    template <class Make>
    std::shared_ptr<const Value> get(const Key& key, const Make& make) {
        std::shared_ptr<Entry> entry;
        {
            const std::lock_guard lock(mutex_);
            const auto found = std::find_if(entries_.begin(), entries_.end(),
                                            [&](const auto& held) { return held->key == key; });
            if (found != entries_.end()) {
                entry = *found;
                entries_.erase(found);
            } else {
                entry = std::make_shared<Entry>(key);
            }
            entries_.push_front(entry);
            if (entries_.size() > most_) {
                entries_.pop_back();
            }
        }
        std::call_once(entry->made, [&] { entry->value = make(); });
        return entry->value;
    }

private:
    struct Entry {
        explicit Entry(Key k) : key(std::move(k)) {}
        Key key;
        std::once_flag made;
        std::shared_ptr<const Value> value;
    };
    std::size_t most_;
    std::mutex mutex_;
    std::deque<std::shared_ptr<Entry>> entries_;
};

using Numbers = std::vector<double>;

Numbers numbers_of(const geometry::Winding& w, double radius_m, double refinement) {
    return {static_cast<double>(w.outline),
            static_cast<double>(w.sides),
            w.size.value(),
            static_cast<double>(w.measure),
            w.width.value(),
            w.height.value(),
            w.corner_down ? 1.0 : 0.0,
            static_cast<double>(w.turns),
            static_cast<double>(w.arrangement),
            w.spacing.value(),
            w.lead.value(),
            w.gap.value(),
            radius_m,
            refinement};
}

struct GroundKey {
    std::shared_ptr<const wire::Solver> solver; ///< held, so that its address stays its own
    wire::Underground underground;
    Numbers stand;
    bool operator==(const GroundKey&) const = default;
};

Numbers numbers_of(const geometry::Frame& f) {
    return {f.origin.x, f.origin.y, f.origin.z, f.right.x, f.right.y, f.right.z,
            f.up.x,     f.up.y,     f.up.z,     f.rise.x,  f.rise.y,  f.rise.z};
}

} // namespace

std::shared_ptr<const wire::Solver> solver_of(const geometry::Winding& winding, double radius_m,
                                              double refinement) {
    static Recent<Numbers, wire::Solver> recent(8);
    return recent.get(numbers_of(winding, radius_m, refinement), [&] {
        const geometry::WirePath path = geometry::wire_path(winding);
        wire::WireModel model;
        model.wires.push_back(wire::wire_along(path, radius_m));
        model.ports = {wire::opposite_gap(path), wire::capacitor_gap(path)};
        wire::MeshOptions options;
        options.refinement = refinement;
        return std::make_shared<const wire::Solver>(std::move(model), options,
                                                    units::hertz(highest_series_Hz));
    });
}

std::shared_ptr<const wire::GroundMatrices> ground_of(const std::shared_ptr<const wire::Solver>& solver,
                                                      const wire::Underground& underground,
                                                      const geometry::Frame& stand) {
    static Recent<GroundKey, wire::GroundMatrices> recent(8);
    return recent.get({solver, underground, numbers_of(stand)}, [&] {
        return std::make_shared<const wire::GroundMatrices>(*solver, underground, stand);
    });
}

} // namespace loopwright::loop::detail

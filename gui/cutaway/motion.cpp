// SPDX-License-Identifier: MIT
#include "gui/cutaway/motion.hpp"

namespace lightoff::cutaway {

Standing standing_of(const bench::Site& site, const bench::Percept& percept) {
    const int module = site.catalogue.find_part("blower_module");
    const auto bit = static_cast<std::size_t>(std::max(0, module));
    const bool off = module >= 0 && (percept.worked.parts_off[bit / 64] >> (bit % 64) & 1U) != 0;
    return {percept.left_as.burner_door_on, percept.left_as.blower_door_on, !off, percept.seen.lamp_on};
}

void Motion::go_on(const Standing& now, double wall_s, bool moves) {
    const double door_s = moves ? wall_s : Way::kLongest_s;
    burner_door.go_on(!now.burner_door_on, door_s);
    blower_door.go_on(!now.blower_door_on, door_s);
    blower_module.go_on(!now.blower_module_in, door_s);
    lamp.go_on(now.lamp_on, wall_s);
}

void Motion::jump(const Standing& now) {
    burner_door.jump(!now.burner_door_on);
    blower_door.jump(!now.blower_door_on);
    blower_module.jump(!now.blower_module_in);
    lamp.jump(now.lamp_on);
}

void Motion::show_in(CutawayScene& scene) const {
    scene.burner_door_away = burner_door.eased();
    scene.blower_door_away = blower_door.eased();
    scene.blower_module_away = blower_module.eased();
    scene.lamp_on = lamp.on();
}

} // namespace lightoff::cutaway

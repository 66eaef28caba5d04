// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstddef>

namespace lightoff::heat {

/// The gas path of the exchanger is cut into this many parts of equal gas-side conductance, burner end first.
inline constexpr std::size_t kPasses = 3;

/// One number for each lump of the heat network: a temperature in K (State), a heat flow into it in W,
/// or a capacity in J/K (Params).
struct Nodes {
    std::array<double, kPasses> exchanger{}; // metal, burner end first
    double plenum = 0.0;                     // supply air with the sheet metal of cabinet and plenum
    double limit = 0.0;                      // bimetal of the limit switch
    double rollout = 0.0;                    // bimetal of the rollout switch
    double collector = 0.0;                  // metal of collector box and inducer housing
    double vent = 0.0;                       // metal of the vent
    double igniter = 0.0;
    double blower_winding = 0.0;
    double inducer_winding = 0.0;
    double transformer = 0.0;
    double house = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("exchanger", "K", self.exchanger);
        visit("plenum", "K", self.plenum);
        visit("limit", "K", self.limit);
        visit("rollout", "K", self.rollout);
        visit("collector", "K", self.collector);
        visit("vent", "K", self.vent);
        visit("igniter", "K", self.igniter);
        visit("blower_winding", "K", self.blower_winding);
        visit("inducer_winding", "K", self.inducer_winding);
        visit("transformer", "K", self.transformer);
        visit("house", "K", self.house);
    }

    /// f(member of the first, member of the second, ...) for every number of the structs given.
    template <class F, class... Of>
    static constexpr void zip(F f, Of&... of) {
        for (std::size_t i = 0; i < kPasses; ++i)
            f(of.exchanger[i]...);
        f(of.plenum...);
        f(of.limit...);
        f(of.rollout...);
        f(of.collector...);
        f(of.vent...);
        f(of.igniter...);
        f(of.blower_winding...);
        f(of.inducer_winding...);
        f(of.transformer...);
        f(of.house...);
    }
};

/// Energy that has crossed each border since the state was made, J (in a rate: W). Every term is
/// integrated from its own flow; none is what remains of the others.
struct Energy {
    double fuel_hhv = 0.0;      // heat released by burning, higher heating value
    double electrical = 0.0;    // blower, inducer, igniter, transformer
    double flue_sensible = 0.0; // leaves at the top of the vent, over the furnace's surroundings
    double flue_latent = 0.0;   // water vapour that leaves uncondensed
    double vent_skin = 0.0;     // vent metal to its surroundings
    double cabinet_skin = 0.0;  // cabinet and plenum skin to the basement
    double vestibule = 0.0;     // burner compartment to the basement, rolled-out flame included
    double delivered = 0.0;     // supply air to the house, over the return air
    double house_gain = 0.0;    // the part of skin and vestibule losses that comes up to the house
    double house_loss = 0.0;    // house to outdoors

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("fuel_hhv", "J", self.fuel_hhv);
        visit("electrical", "J", self.electrical);
        visit("flue_sensible", "J", self.flue_sensible);
        visit("flue_latent", "J", self.flue_latent);
        visit("vent_skin", "J", self.vent_skin);
        visit("cabinet_skin", "J", self.cabinet_skin);
        visit("vestibule", "J", self.vestibule);
        visit("delivered", "J", self.delivered);
        visit("house_gain", "J", self.house_gain);
        visit("house_loss", "J", self.house_loss);
    }

    /// f(member of the first, member of the second, ...) for every number of the structs given.
    template <class F, class... Of>
    static constexpr void zip(F f, Of&... of) {
        f(of.fuel_hhv...);
        f(of.electrical...);
        f(of.flue_sensible...);
        f(of.flue_latent...);
        f(of.vent_skin...);
        f(of.cabinet_skin...);
        f(of.vestibule...);
        f(of.delivered...);
        f(of.house_gain...);
        f(of.house_loss...);
    }
};

/// Heat flows into the nodes and across the borders, W.
struct Flows {
    Nodes node;
    Energy border;
};

} // namespace lightoff::heat

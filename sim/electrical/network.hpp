// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/elimination_plan.hpp"
#include "electrical/network_inputs.hpp"
#include "electrical/port_matrix.hpp"
#include <array>
#include <cstdint>
#include <list>
#include <map>
#include <memory>
#include <vector>

namespace lightoff::electrical {

using units::ComplexPair;

/// 60 Hz r.m.s. phasors of the ports; everything else follows from them.
struct AcSolution {
    std::array<Complex, kMaxPorts> port_v{};
    std::array<Complex, kMaxPorts> port_a{}; ///< into the port's element at its node a
    std::array<MotorTorque, kMaxMotors> torque{};
    std::array<double, kMaxPorts> flame_open_v{}; ///< r.m.s. at the rod if the flame drew nothing
};

/// Mean values.
struct DcSolution {
    std::array<double, kMaxPorts> port_a{}; ///< a flame's: its mean rectified current, rod to burner
};

using AcVoltages = std::array<Complex, kMaxNodes>; ///< against earth; field nodes: EMF per turn
using DcVoltages = std::array<double, kMaxNodes>;

/// Solves a netlist at 60 Hz and at DC. A full solve (star-mesh elimination of every node, no
/// diagonal and so no subtraction: a floating island keeps its ghost volts) reduces the network to
/// its ports; after that a tick costs a small dense solve. Results are a pure function of netlist,
/// condition and inputs: what the workspace held before does not change a bit.
///
/// At DC a winding and a coil are their resistance, a capacitor its insulation, an AC source its
/// series resistance, a flame a source of its mean current.
///
/// The netlist must outlive the workspace. `set` allocates only when attachments or bridges join
/// other nodes than before, and for the first few states of the wiring that it keeps.
class Workspace {
public:
    explicit Workspace(const Netlist& netlist);

    /// Takes the state of the wiring; cheap when nothing changed, or when it has been in this state lately.
    void set(const Condition& condition, const NetworkInputs& inputs);

    /// The solution stays in the workspace until the wiring is set to another state or the ports are others;
    /// asking again costs a comparison.
    const AcSolution& solve_ac(const PortInputs& ports);
    const DcSolution& solve_dc(const PortInputs& ports);

    /// Values of Netlist::senses.
    [[nodiscard]] Complex ac_sense(const AcSolution& solution, int sense) const;
    [[nodiscard]] double dc_sense(const DcSolution& solution, int sense) const;
    /// R.m.s. values of the first `count` senses in the solution that stands in the workspace, all at once: a
    /// third of the cost of asking one by one, and nothing if they were asked for before.
    using SenseValues = std::array<double, kMaxSenses>;
    const SenseValues& ac_sense_rms(int count);
    /// The same squared.
    const SenseValues& ac_sense_squares(int count);
    /// Heat in the element of a current sense: |I|^2 R in W (60 Hz part), in the solution that stands in the
    /// workspace. 0 for a voltage sense.
    double ac_loss_w(int sense);
    /// Heat in an igniter of `ohm` at its port's voltage in W, what is lost in a bad terminal not counted.
    [[nodiscard]] double igniter_w(const AcSolution& solution, int port, double ohm) const;

    /// Voltage of node a against node b of an attachment, and the current that flows out of node a
    /// through it to b.
    [[nodiscard]] Complex ac_attachment_v(const AcSolution& solution, int attachment) const;
    [[nodiscard]] Complex ac_attachment_a(const AcSolution& solution, int attachment) const;
    [[nodiscard]] double dc_attachment_v(const DcSolution& solution, int attachment) const;
    [[nodiscard]] double dc_attachment_a(const DcSolution& solution, int attachment) const;

    /// Every node (about half a full solve).
    void node_voltages(const AcSolution& solution, AcVoltages& volts) const;
    void node_voltages(const DcSolution& solution, DcVoltages& volts) const;

    /// The same in the AC solution that stands in the workspace; nothing if it was asked for before.
    const AcVoltages& ac_node_voltages();

    /// Current from a to b through an element when all nodes are known.
    [[nodiscard]] Complex element_current(const AcSolution& solution, const AcVoltages& volts,
                                          int element) const;
    [[nodiscard]] double element_current(const DcSolution& solution, const DcVoltages& volts,
                                         int element) const;

    /// Forgets the reduction, so that the next solve is a full one (for benchmarks).
    void forget();

    [[nodiscard]] const EliminationPlan& plan() const { return now().planned->plan; }

    static constexpr int kRows = kMaxSenses + kMaxAttachments;
    static constexpr int kColumns = 1 + kMaxPorts; ///< sources, then a unit current at each port

    /// The network as its ports, senses and attachments see it: x = offset - rows * port currents.
    template <class T>
    struct Reduced {
        bool valid = false;
        std::vector<T> y;             ///< branches; after elimination fractions of a star
        std::vector<T> pivot_inverse; ///< by step
        std::vector<T> current;       ///< by node, carried as far as the kept nodes
        std::array<std::array<T, kColumns>, kMaxPorts> ports{};
        std::array<std::array<T, kColumns>, kRows> rows{};
    };

    /// Scratch of a reduction, by node.
    template <class T>
    using Columns = std::vector<std::array<T, kColumns>>;

    /// Matrix of a port solve with its right-hand side in the last column.
    template <class T>
    using Dense = std::array<std::array<T, kMaxPorts + 1>, kMaxPorts>;

private:
    using TemperatureSteps = std::array<std::int32_t, kMaxThermalGroups>;
    /// Everything a reduction depends on, without padding, compared as bytes.
    struct Key {
        Condition condition;
        std::array<Attachment, kMaxAttachments> attachments{};
        std::array<double, kMaxSources> source_factor{};
        std::uint64_t switches = 0;
        ElementBits parted{};
        TemperatureSteps temperature_steps{};

        [[nodiscard]] bool is_of(const Condition& wiring, const NetworkInputs& inputs,
                                 const TemperatureSteps& steps) const;
    };
    struct Stamp { ///< where an element's branches are in y
        std::array<int, 6> branch{};
    };
    using Joins = std::array<NodePair, kMaxBridges + kMaxAttachments>;
    /// What depends on nothing but the places that bridges and attachments join.
    struct Planned {
        EliminationPlan plan;
        std::vector<Stamp> stamps;
        std::array<int, kMaxBridges> bridge_branch{};
        std::array<int, kMaxAttachments> attachment_branch{};
        std::vector<int> wanted_steps; ///< whose voltages senses, ports or attachments need, last first
    };
    /// A network reduced to its ports: what follows from its key and from nothing else.
    struct Reduction {
        Key key;
        std::shared_ptr<const Planned> planned;
        Reduced<Complex> ac;
        Reduced<double> dc;
        PortMatrix<kMaxPorts> network_y{};
        std::array<std::array<ComplexPair, kColumns>, kMaxSenses / 2> sense_pairs{}; ///< rows of two senses
        SenseValues sense_ohm{}; ///< of the elements whose currents are sensed
    };
    static constexpr std::size_t kKeptPlans = 64;
    static constexpr std::size_t kKeptReductions = 32;

    Reduction& now() { return kept_.front(); }
    [[nodiscard]] const Reduction& now() const { return kept_.front(); }
    void begin(const Key& key);
    [[nodiscard]] std::shared_ptr<const Planned> planned_for(const Key& key);
    [[nodiscard]] Planned plan_for(const Joins& joins) const;
    void forget_solutions();
    void take(const PortInputs& ports);
    template <class T>
    Reduced<T>& reduced();
    template <class T>
    void assemble(Reduced<T>& r) const;
    template <class T>
    void reduce(Reduced<T>& r, Columns<T>& columns) const;
    template <class T>
    std::array<T, kColumns> current_row(const Columns<T>& columns, int element) const;
    template <class T>
    void all_nodes(const Reduced<T>& r, const std::array<T, kMaxPorts>& port_a,
                   std::array<T, kMaxNodes>& volts) const;

    void invert_ports();
    void lay_out_senses();
    [[nodiscard]] double branch_siemens(const Port& port, int k, const PortInputs& in) const;

    const Netlist* netlist_;
    std::map<Joins, std::shared_ptr<const Planned>> plans_; ///< leads go to and fro between few places
    std::list<Reduction> kept_; ///< the wiring as it is, then what it was before, the latest first
    PortInputs solved_for_;     ///< the ports of the solutions below, where those are valid
    bool ac_solved_ = false;
    bool dc_solved_ = false;
    bool ac_nodes_known_ = false;
    int squared_ = 0; ///< senses whose squares are worked out
    int sensed_ = 0;  ///< senses whose r.m.s. values are
    AcSolution solution_;
    DcSolution dc_solution_;
    SenseValues sense_squares_{};
    SenseValues sense_rms_{};
    AcVoltages ac_nodes_{};
    PortMatrix<kMaxPorts> port_matrix_{}; ///< scratch, like the rest: made once, not cleared in every tick
    std::array<MotorAdmittance, kMaxMotors> motors_{};
    Columns<Complex> ac_columns_;
    Columns<double> dc_columns_;
    Dense<Complex> dense_ac_{};
    Dense<double> dense_dc_{};
};

} // namespace lightoff::electrical

package org.holdproof.core.assess;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.standard.ThermalDeath;

/**
 * Integrated lethality at the coldest core probe, shown as margin beside the published rows.
 *
 * @param kinetics the D, z and reference temperature it is worked out with
 * @param channel the probe with the least
 * @param log10 decimal reductions over the cook
 */
public record Integrated(ThermalDeath kinetics, String channel, Bounded log10) {}

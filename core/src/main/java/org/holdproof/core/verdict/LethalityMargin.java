package org.holdproof.core.verdict;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.rules.ThermalDeath;

/**
 * LethalityMargin lethality at the coldest core probe, shown as margin beside the published rows.
 *
 * @param kinetics the D, z and reference temperature it is worked out with
 * @param channel the probe with the least
 * @param log10 decimal reductions over the cook
 */
public record LethalityMargin(ThermalDeath kinetics, String channel, Bounded log10) {}

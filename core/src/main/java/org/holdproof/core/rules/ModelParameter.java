package org.holdproof.core.rules;

/**
 * A parameter of a predicting model in its three sets. The sets belong together: low, central and high stand for the
 * least, the likeliest and the most that comes out of the model, so that a parameter of the low set may be the larger
 * figure.
 *
 * @param unit as in {@code kJ/mol}
 */
public record ModelParameter(
        String id, String title, double low, double central, double high, String unit, Citation citation) {}

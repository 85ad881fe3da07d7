package org.holdproof.core.heat.smoke;

import java.util.OptionalDouble;

/**
 * When a core may come to a temperature, in minutes; empty where it does not within what was reckoned. A prediction.
 *
 * @param earliest with the fast surface
 * @param likely with the nominal one
 * @param latest with the slow one
 */
public record Arrival(OptionalDouble earliest, OptionalDouble likely, OptionalDouble latest) {}

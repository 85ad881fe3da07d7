/**
 * Meat in a smoker: how its surface dries, when its core may come to a temperature, and what a cook under way tells. A
 * prediction, never evidence for a verdict. {@link org.holdproof.core.heat.smoke.SmokeForecast} is where to begin.
 */
@NullMarked
package org.holdproof.core.heat.smoke;

import org.jspecify.annotations.NullMarked;

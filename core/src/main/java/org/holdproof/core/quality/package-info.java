/**
 * Weight, tenderness, colour, yield and cost from a core's history, planned or logged: predictions, never part of a
 * verdict. {@link org.holdproof.core.quality.QualityOutlook} is the entry.
 */
@NullMarked
package org.holdproof.core.quality;

import org.jspecify.annotations.NullMarked;

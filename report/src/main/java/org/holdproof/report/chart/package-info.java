/** Charts drawn as lines and type, nothing sampled into pictures. */
@NullMarked
package org.holdproof.report.chart;

import org.jspecify.annotations.NullMarked;

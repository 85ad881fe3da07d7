/** The wall chart: one sheet that says how long a piece stays in the bath. */
@NullMarked
package org.holdproof.report.wall;

import org.jspecify.annotations.NullMarked;

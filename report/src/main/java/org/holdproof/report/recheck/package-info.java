/** A report looked at again: its seal and what rides inside; {@link Recheck} is the entry. */
@NullMarked
package org.holdproof.report.recheck;

import org.jspecify.annotations.NullMarked;

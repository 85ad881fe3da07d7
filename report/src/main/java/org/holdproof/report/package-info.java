/** What goes into a report. */
@NullMarked
package org.holdproof.report;

import org.jspecify.annotations.NullMarked;

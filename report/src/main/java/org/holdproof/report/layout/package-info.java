/** The report's pages. */
@NullMarked
package org.holdproof.report.layout;

import org.jspecify.annotations.NullMarked;

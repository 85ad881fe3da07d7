/** Drawing on a page: type, lines and the palette, measured from the sheet's top left corner in points. */
@NullMarked
package org.holdproof.report.draw;

import org.jspecify.annotations.NullMarked;

/** The lesson: one cut in a row of baths, what grows in it, what dies in it, and what no bath undoes. */
@NullMarked
package org.holdproof.core.lesson;

import org.jspecify.annotations.NullMarked;

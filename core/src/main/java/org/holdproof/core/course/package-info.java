/** One batch on one clock: the core probes as corrected, the medium, and which part of the record belongs to which question. Begin with {@link org.holdproof.core.course.Evidence}. */
@NullMarked
package org.holdproof.core.course;

import org.jspecify.annotations.NullMarked;

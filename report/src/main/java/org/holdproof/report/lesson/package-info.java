/** The lesson's pages: one to hand out, one to project, the exercises and their key. */
@NullMarked
package org.holdproof.report.lesson;

import org.jspecify.annotations.NullMarked;

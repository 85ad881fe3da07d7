/** The command line: one class a command, no arithmetic. */
@NullMarked
package org.holdproof.cli;

import org.jspecify.annotations.NullMarked;

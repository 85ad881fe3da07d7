/** What a person sees in the terminal: the answer on one screen, the curve drawn in characters, progress. */
@NullMarked
package org.holdproof.cli.terminal;

import org.jspecify.annotations.NullMarked;

/** Man pages and shell completion, written at build from the commands themselves. */
@NullMarked
package org.holdproof.cli.manual;

import org.jspecify.annotations.NullMarked;

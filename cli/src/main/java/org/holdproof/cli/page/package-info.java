/**
 * The local page: one more door to the library, in a browser on the same machine. {@link
 * org.holdproof.cli.page.PageServer} starts it; {@code contract.json} beside the page's files describes what the two
 * say to each other.
 */
@NullMarked
package org.holdproof.cli.page;

import org.jspecify.annotations.NullMarked;

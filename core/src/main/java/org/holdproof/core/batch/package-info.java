/** The batch record: what was cooked, with which instrument, in which stages, under which authority. */
@NullMarked
package org.holdproof.core.batch;

import org.jspecify.annotations.NullMarked;

/** The judgement of a batch: its checks, their verdicts, what to know besides, and its JSON. Begin with {@link org.holdproof.core.verdict.Assessment}. */
@NullMarked
package org.holdproof.core.verdict;

import org.jspecify.annotations.NullMarked;

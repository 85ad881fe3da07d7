package org.holdproof.core.standing;

import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Bounded;

/** How much of a limit one probe has used. */
record UsedTime(Trace trace, Bounded minutes) {
    double celsius() {
        return trace.celsius(trace.size() - 1);
    }
}

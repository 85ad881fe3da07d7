package org.holdproof.core.course;

import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Span;

/**
 * A stretch after lethality over which a core was not surely hot and not surely cold.
 *
 * @param before what it was surely last
 * @param after what it surely was next
 * @param span from the last moment it was surely {@code before} to the first it was surely {@code after}
 * @param minutes how long it was neither hot nor cold: at worst the whole span, at best only where even the readings'
 *     tolerance leaves it neither
 * @param timeOnly whether the record keeps some of it by time alone
 */
public record Spell(State before, State after, Span span, Bounded minutes, boolean timeOnly) {

    /** What a core surely is. */
    public enum State {
        HOT,
        COLD,
        /** The batch ended. */
        ENDED
    }

    /** This spell and a later one as one, with what lay between them. */
    Spell joinedWith(Spell later) {
        double between = (later.span.fromMillis() - span.toMillis()) / 60_000.0;
        return new Spell(
                before,
                later.after,
                new Span(span.fromMillis(), later.span.toMillis()),
                new Bounded(
                        minutes.worst() + between + later.minutes.worst(),
                        minutes.nominal() + later.minutes.nominal(),
                        minutes.best() + later.minutes.best()),
                timeOnly || later.timeOnly);
    }

    /** Whether it goes from one state to another. */
    public boolean goes(State from, State to) {
        return before == from && after == to;
    }
}

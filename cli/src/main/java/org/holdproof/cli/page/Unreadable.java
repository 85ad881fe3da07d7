package org.holdproof.cli.page;

import org.holdproof.core.input.Place;
import org.holdproof.core.input.UnreadableInputException;

/** A reader's own words, in parts. */
final class Unreadable {
    private Unreadable() {}

    /** @param what {@code log} or {@code record} */
    static Fault fault(String what, UnreadableInputException unreadable) {
        Fault fault = Fault.unreadable(String.valueOf(unreadable.getMessage()))
                .with("what", what)
                .with("found", unreadable.found())
                .with("expected", unreadable.expected())
                .with("remedy", unreadable.remedy());
        Place place = unreadable.place();
        place.line().ifPresent(line -> fault.with("line", line));
        place.column().ifPresent(column -> fault.with("column", column));
        place.pointer().ifPresent(pointer -> fault.with("pointer", pointer));
        return fault;
    }
}

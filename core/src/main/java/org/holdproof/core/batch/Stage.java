package org.holdproof.core.batch;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One stage of the batch.
 *
 * @param from when it began
 * @param to when it ended; empty for a moment (bagging, serving) or a stage still open
 * @param setPointCelsius what the smoker, bath, holding box or chiller was set to, in °C
 * @param moisture what kept the surface moist
 * @param mark what the container says of its time, for food kept by time alone; empty: unmarked
 */
public record Stage(
        Kind kind,
        Instant from,
        Optional<Instant> to,
        OptionalDouble setPointCelsius,
        Optional<Moisture> moisture,
        String mark) {

    /** The stages a long low-temperature cook can have. */
    public enum Kind {
        SMOKE("smoke"),
        BAG("bag"),
        BATH("bath"),
        HOT_HOLD("hot hold"),
        CHILL("chill"),
        STORE("store"),
        REHEAT("reheat"),
        FREEZE("freeze"),
        /** Out of temperature control, kept safe by time alone. */
        TIME_ONLY("time only"),
        SERVE("serve");

        private final String title;

        Kind(String title) {
            this.title = title;
        }

        /** The stage's name as it is written in a batch record and printed. */
        public String title() {
            return title;
        }

        /** Whether it is a moment rather than a spell of time. */
        public boolean isMoment() {
            return this == BAG || this == SERVE;
        }

        /** Whether the food is being cooked. */
        public boolean isCook() {
            return this == SMOKE || this == BATH;
        }
    }

    /** A stage with nothing said of its surface and no mark. */
    public Stage(Kind kind, Instant from, Optional<Instant> to, OptionalDouble setPointCelsius) {
        this(kind, from, to, setPointCelsius, Optional.empty(), "");
    }

    public Stage {
        if (to.isPresent() && to.get().isBefore(from)) {
            throw new IllegalArgumentException("the stage ends before it begins");
        }
        if (!Double.isFinite(setPointCelsius.orElse(0))) {
            throw new IllegalArgumentException("set point " + setPointCelsius);
        }
    }
}

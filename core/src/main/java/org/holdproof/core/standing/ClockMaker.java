package org.holdproof.core.standing;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.holdproof.core.wording.Wording;

/** Makes running clocks with their words, and says ahead where the present pace is too slow for the limit. */
record ClockMaker(Wording wording, long presentMillis) {

    /**
     * A clock such as {@code Cooling stage 1: 95.2 °F now (Core); to be at 70 °F by 12 Feb 14:05, 45 min left of 120 min}.
     *
     * @param goal what must be, in words
     * @param goalCelsius the temperature that ends it, where one does
     */
    RunningClock make(
            String check, UsedTime used, double limitMinutes, String title, String goal, OptionalDouble goalCelsius) {
        RunningClock bare = new RunningClock(
                check,
                title,
                used.trace().channel(),
                presentMillis,
                used.minutes(),
                limitMinutes,
                expected(used, goalCelsius),
                "");
        return new RunningClock(
                check,
                title,
                bare.channel(),
                presentMillis,
                bare.usedMinutes(),
                limitMinutes,
                bare.soonestMillis(),
                title + ": " + wording.temperature(used.celsius()) + " now (" + bare.channel() + "); "
                        + until(bare, goal) + ahead(bare));
    }

    private String until(RunningClock clock, String goal) {
        if (clock.minutesLeft() >= 0) {
            return "to be " + goal + " by " + wording.clock(clock.provableUntilMillis()) + ", "
                    + Wording.minutes(Math.floor(clock.minutesLeft())) + " left of "
                    + Wording.minutes(clock.limitMinutes());
        }
        return clock.limitMinutes() - clock.usedMinutes().best() >= 0
                ? "to be " + goal + " it can no longer be proven in time; lost at "
                        + wording.clock(clock.lostFromMillis())
                : "not " + goal + "; its " + Wording.minutes(clock.limitMinutes()) + " ran out at "
                        + wording.clock(clock.lostFromMillis());
    }

    /** At the pace of the last quarter of an hour, where that pace grows no more. */
    private OptionalLong expected(UsedTime used, OptionalDouble goalCelsius) {
        if (goalCelsius.isEmpty()) {
            return OptionalLong.empty();
        }
        Optional<Double> minutes = Trend.of(used.trace())
                .flatMap(trend -> trend.soonestMinutes(used.celsius(), goalCelsius.getAsDouble()));
        return minutes.isPresent()
                ? OptionalLong.of(used.trace().lastMillis() + Math.round(minutes.get() * 60_000))
                : OptionalLong.empty();
    }

    private String ahead(RunningClock clock) {
        if (!clock.isExpectedLate()) {
            return "";
        }
        long soonest = clock.soonestMillis().orElseThrow();
        double late = (soonest - clock.provableUntilMillis()) / 60_000.0;
        return ". At its present pace it is there at " + wording.clock(soonest) + " at the soonest, "
                + Wording.minutes(Math.ceil(late)) + " too late";
    }
}

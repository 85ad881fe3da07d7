package org.holdproof.core.course;

import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.Span;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.wording.Wording;

/**
 * What the checks work on: the core probes' readings corrected for the instrument's known error, and the record.
 *
 * @param core one trace a core probe, corrected
 * @param toleranceCelsius how far a corrected reading may still lie from the truth, in °C
 * @param surroundings what the medium's log says where a core was not read
 */
public record Evidence(
        BatchRecord batch,
        AuthorityProfile authority,
        List<Trace> core,
        double toleranceCelsius,
        CookTimeline timeline,
        Wording wording,
        Surroundings surroundings) {

    /** Evidence without a medium's log. */
    public Evidence(
            BatchRecord batch,
            AuthorityProfile authority,
            List<Trace> core,
            double toleranceCelsius,
            CookTimeline timeline,
            Wording wording) {
        this(batch, authority, core, toleranceCelsius, timeline, wording, Surroundings.NONE);
    }

    public Evidence {
        core = List.copyOf(core);
    }

    /** The longest interval of a probe's log that is not a gap, in minutes; of the whole log, whatever part is judged. */
    public double gapMinutes(Trace part) {
        for (Trace whole : core) {
            if (whole.channel().equals(part.channel())) {
                return GapLimit.minutes(whole, OptionalDouble.empty());
            }
        }
        return GapLimit.minutes(part, OptionalDouble.empty());
    }

    /** Every core probe's readings inside a span. */
    public List<Trace> within(Span span) {
        return core.stream()
                .map(trace -> trace.between(span.fromMillis(), span.toMillis()))
                .toList();
    }
}

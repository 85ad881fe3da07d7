package org.holdproof.core.batch;

import java.util.List;
import java.util.Optional;
import org.holdproof.core.log.LogSettings;

/**
 * One log of a cook.
 *
 * @param file its file's name without a folder; empty where the record speaks of one log only and leaves it open
 * @param instrument the logger that wrote it
 * @param settings what the file may leave open
 * @param clock how the logger's clock stood against the kitchen's
 * @param columns what its columns measured, in the order of the record
 */
public record LogSource(
        Optional<String> file, Instrument instrument, LogSettings settings, ClockError clock, List<ColumnUse> columns) {

    public LogSource {
        columns = List.copyOf(columns);
    }
}

package org.holdproof.core.log.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.junit.jupiter.api.Test;

/** A long log takes no more memory than its columns, and not a letter of it is kept. */
class LargeLogTest {
    private static final int ROWS = 1_000_000;

    /** A log of one row a second, made while it is read. */
    private static final class Rows extends InputStream {
        private byte[] line = "time,core °C,bath °C\n".getBytes(StandardCharsets.UTF_8);
        private int at;
        private int row;

        @Override
        public int read() {
            if (at == line.length && !next()) {
                return -1;
            }
            return line[at++] & 0xff;
        }

        @Override
        public int read(byte[] target, int offset, int length) {
            if (at == line.length && !next()) {
                return -1;
            }
            int count = Math.min(length, line.length - at);
            System.arraycopy(line, at, target, offset, count);
            at += count;
            return count;
        }

        private boolean next() {
            if (row == ROWS) {
                return false;
            }
            line = (1_936_771_200L + row + "," + (54 + row / 60 % 10) + "." + row % 10 + ",56.0\n")
                    .getBytes(StandardCharsets.UTF_8);
            at = 0;
            row++;
            return true;
        }
    }

    @Test
    void takesTwelveBytesARowAndEightAReading() throws Exception {
        ProbeLog log = LogReader.read("log.csv", new Rows(), LogSettings.NONE);
        assertThat(log.rows()).isEqualTo(ROWS);
        assertThat(log.celsius(0, ROWS - 1)).isEqualTo(54 + (ROWS - 1) / 60 % 10 + 0.9);

        Columns columns = new Columns(2);
        for (int row = 0; row < ROWS; row++) {
            columns.add(row, row + 2L, new double[] {54, 56});
        }
        long chunk = Columns.CHUNK * (Long.BYTES + Integer.BYTES + 2L * Double.BYTES);
        assertThat(columns.bytes()).isLessThanOrEqualTo(ROWS * (12 + 2 * 8L) + chunk);
        assertThat(columns.bytes() / (2.0 * ROWS))
                .as("bytes a reading and channel")
                .isLessThan(20);
    }
}

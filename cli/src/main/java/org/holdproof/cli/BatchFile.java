package org.holdproof.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.input.UnreadableInputException;

/**
 * A batch record with its bytes. Answers from the command line are written into the record itself: what rides inside a
 * report is then all that is needed to reckon it again.
 */
final class BatchFile {
    private static final int LARGEST = 1 << 20;

    private final String name;
    private final byte[] bytes;
    private final BatchRecord record;

    private BatchFile(String name, byte[] bytes, BatchRecord record) {
        this.name = name;
        this.bytes = bytes;
        this.record = record;
    }

    /**
     * What the command line settles in the record's place.
     *
     * @param authority an authority profile's id
     * @param unit {@code C} or {@code F}
     * @param dates {@code dmy}, {@code mdy} or {@code ymd}
     */
    record Answers(Optional<String> authority, Optional<String> unit, Optional<String> dates) {
        static final Answers NONE = new Answers(Optional.empty(), Optional.empty(), Optional.empty());

        boolean isEmpty() {
            return equals(NONE);
        }
    }

    static BatchFile read(Path file, Answers answers) throws Refusal, UnreadableInputException {
        byte[] handedIn = InputFile.bytes(file, LARGEST + 1);
        BatchRecord record = BatchReader.parse(file.toString(), handedIn);
        String name = InputFile.name(file);
        if (answers.isEmpty()) {
            return new BatchFile(name, handedIn, record);
        }
        byte[] answered = answered(handedIn, answers);
        return new BatchFile(name, answered, BatchReader.parse(file.toString(), answered));
    }

    /** The file's name, without its folder. */
    String name() {
        return name;
    }

    /** The file as handed in, or with the answers written in. */
    byte[] bytes() {
        return bytes.clone();
    }

    BatchRecord record() {
        return record;
    }

    private static byte[] answered(byte[] handedIn, Answers answers) {
        try {
            ObjectMapper json = new ObjectMapper();
            ObjectNode record = (ObjectNode) json.readTree(handedIn);
            answers.authority().ifPresent(id -> record.put("authority", id));
            answers.unit().ifPresent(unit -> record.withObjectProperty("log").put("unit", unit));
            answers.dates().ifPresent(dates -> record.withObjectProperty("log").put("dates", dates));
            return json.writerWithDefaultPrettyPrinter().writeValueAsBytes(record);
        } catch (IOException | ClassCastException impossible) {
            throw new IllegalStateException("a batch record that was read is no JSON object", impossible);
        }
    }
}

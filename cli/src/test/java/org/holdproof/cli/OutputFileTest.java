package org.holdproof.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFileTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void replacesAFileWholeAndLeavesNothingBeside() throws Exception {
        Path file = folder.resolve("report.pdf");
        Files.writeString(file, "before");
        OutputFile.at(file, List.of()).write("after".getBytes(StandardCharsets.UTF_8));
        assertThat(file).hasContent("after");
        assertThat(folder).isDirectoryContaining(found -> found.equals(file));
        assertThat(folder.toFile().list()).hasSize(1);
    }

    @Test
    void refusesAnInputUnderAnyName() throws Exception {
        Path log = Files.writeString(folder.resolve("log.csv"), "x");
        Path alias = Files.createSymbolicLink(folder.resolve("alias"), log);
        for (Path same : List.of(log, alias, folder.resolve("./log.csv"))) {
            assertThatThrownBy(() -> OutputFile.at(same, List.of(log)))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("is an input");
        }
        assertThat(log).hasContent("x");
    }

    @Test
    void refusesPlacesNothingCanBeWrittenTo() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "");
        assertThatThrownBy(() -> OutputFile.at(folder, List.of())).hasMessageContaining("is a folder");
        assertThatThrownBy(() -> OutputFile.at(folder.resolve("none/report.pdf"), List.of()))
                .hasMessageContaining("does not exist");
        assertThatThrownBy(() -> OutputFile.at(file.resolve("report.pdf"), List.of()))
                .hasMessageContaining("does not exist");
        assertThatThrownBy(() -> OutputFile.at(Path.of("/dev/null"), List.of()))
                .hasMessageContaining("not a regular file");
    }

    @Test
    void aSecretIsItsOwnersAloneAndNeverOverwritten() throws Exception {
        Path key = folder.resolve("key.p12");
        OutputFile secret = OutputFile.secretAt(key);
        secret.write(new byte[] {1});
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(key)))
                .isEqualTo("rw-------");
        assertThatThrownBy(() -> OutputFile.secretAt(key)).hasMessageContaining("not overwritten");
        assertThatThrownBy(() -> secret.write(new byte[] {2})).isInstanceOf(java.io.IOException.class);
        assertThat(Files.readAllBytes(key)).containsExactly(1);
    }
}

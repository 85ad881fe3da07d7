package org.holdproof.report.recheck;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.holdproof.report.archive.Attachment;
import org.holdproof.report.archive.DigestList;
import org.holdproof.report.pdf.MalformedPdfException;
import org.holdproof.report.pdf.PdfObjects;
import org.holdproof.report.pdf.PdfValue;

/** Takes the attached files out of a report and compares them with the digests listed inside it. */
final class AttachedFiles {
    private static final int DEEPEST_TREE = 16;

    private final PdfObjects objects;
    private final List<Attachment> found;
    private final Consumer<String> complain;

    private AttachedFiles(PdfObjects objects, List<Attachment> found, Consumer<String> complain) {
        this.objects = objects;
        this.found = found;
        this.complain = complain;
    }

    /**
     * @param found receives what could be read
     * @param complain hears of everything that is wrong
     */
    static void read(
            PdfObjects objects, PdfValue.Dictionary catalog, List<Attachment> found, Consumer<String> complain) {
        new AttachedFiles(objects, found, complain).readAll(catalog);
    }

    private void readAll(PdfValue.Dictionary catalog) {
        List<PdfValue> named = new ArrayList<>();
        objects.dictionary(catalog, "Names")
                .flatMap(names -> objects.dictionary(names, "EmbeddedFiles"))
                .ifPresent(tree -> collect(tree, named, 0));
        List<PdfValue> associated =
                objects.array(catalog, "AF").map(PdfValue.Array::items).orElse(List.of());
        Set<Integer> files = numbers(associated);
        if (!numbers(named).equals(files) || files.size() != associated.size() || objects.count("EF") != files.size()) {
            complain.accept("the lists of attached files contradict each other");
        }
        for (PdfValue file : associated) {
            Optional<PdfValue.Dictionary> specification = objects.dictionary(file);
            if (specification.isEmpty()) {
                complain.accept("an attached file is listed but missing");
            } else {
                readOne(specification.get());
            }
        }
        compareWithList();
    }

    private void collect(PdfValue.Dictionary tree, List<PdfValue> named, int depth) {
        if (depth > DEEPEST_TREE) {
            return;
        }
        objects.array(tree, "Names").ifPresent(names -> {
            for (int i = 1; i < names.items().size(); i += 2) {
                named.add(names.items().get(i));
            }
        });
        objects.array(tree, "Kids").ifPresent(kids -> {
            for (PdfValue kid : kids.items()) {
                objects.dictionary(kid).ifPresent(child -> collect(child, named, depth + 1));
            }
        });
    }

    private static Set<Integer> numbers(List<PdfValue> references) {
        Set<Integer> numbers = new HashSet<>();
        for (PdfValue value : references) {
            numbers.add(value instanceof PdfValue.Reference reference ? reference.number() : -1);
        }
        return numbers;
    }

    private void readOne(PdfValue.Dictionary specification) {
        String name = objects.text(specification, "UF").orElse("(no name)");
        Optional<PdfValue.Dictionary> embedded = objects.dictionary(specification, "EF");
        Optional<PdfValue> stream = embedded.flatMap(files -> files.get("F"));
        if (stream.isEmpty()
                || !numbers(List.of(stream.get()))
                        .equals(numbers(embedded.get().get("UF").stream().toList()))) {
            complain.accept("the attached file \"" + name + "\" has no content, or two");
            return;
        }
        Optional<Attachment.Role> role = objects.text(specification, "Desc").flatMap(Attachment.Role::titled);
        if (role.isEmpty()) {
            complain.accept("the attached file \"" + name + "\" is none that reports carry");
            return;
        }
        try {
            Attachment attachment =
                    new Attachment(role.get(), name, mimeType(stream.get()), objects.content(stream.get()));
            if (size(stream.get()) != attachment.sharedContent().length) {
                complain.accept("the attached file \"" + name + "\" is not as long as it says");
            }
            boolean repeated =
                    role.get() != Attachment.Role.LOG && found.stream().anyMatch(other -> other.role() == role.get());
            if (repeated || found.stream().anyMatch(other -> other.name().equals(name))) {
                complain.accept("a second attached file is called \""
                        + (repeated ? role.get().title() : name) + "\"");
            } else {
                found.add(attachment);
            }
        } catch (MalformedPdfException | IllegalArgumentException unreadable) {
            complain.accept("the attached file \"" + name + "\" cannot be read, " + unreadable.getMessage());
        }
    }

    private String mimeType(PdfValue stream) {
        return objects.stream(stream)
                .flatMap(dictionary -> dictionary.get("Subtype"))
                .map(type -> type instanceof PdfValue.Name name ? name.text() : "")
                .orElse("");
    }

    private long size(PdfValue stream) {
        return objects.stream(stream)
                .flatMap(dictionary -> objects.dictionary(dictionary, "Params"))
                .flatMap(params -> params.get("Size"))
                .map(size -> size instanceof PdfValue.Whole whole ? whole.value() : -1L)
                .orElse(-1L);
    }

    private void compareWithList() {
        Optional<Map<String, String>> listed = found.stream()
                .filter(attachment -> attachment.role() == Attachment.Role.DIGESTS)
                .findFirst()
                .flatMap(list -> DigestList.read(list.sharedContent()));
        if (listed.isEmpty()) {
            complain.accept("the list of the attached files' digests is missing or cannot be read");
            return;
        }
        Set<String> unseen = new HashSet<>(listed.get().keySet());
        for (Attachment attachment : found) {
            if (attachment.role() == Attachment.Role.DIGESTS) {
                continue;
            }
            unseen.remove(attachment.name());
            String digest = listed.get().get(attachment.name());
            if (digest == null) {
                complain.accept("the attached file \"" + attachment.name() + "\" is not among the listed digests");
            } else if (!digest.equals(attachment.sha256())) {
                complain.accept("the attached file \"" + attachment.name() + "\" is not the one listed: its SHA-256 is "
                        + attachment.sha256() + ", listed is " + digest);
            }
        }
        for (String name : unseen) {
            complain.accept("the attached file \"" + name + "\" is listed but missing");
        }
    }
}

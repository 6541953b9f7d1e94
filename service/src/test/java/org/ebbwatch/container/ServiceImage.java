package org.ebbwatch.container;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.testcontainers.images.builder.ImageFromDockerfile;

/** The image of the service by its own recipe, with what these tests run with in place of the packed jar. */
final class ServiceImage {
    private static final Path RECIPE = Path.of("src", "main", "container", "Containerfile");

    private ServiceImage() {}

    /**
     * An image that is built when it is first needed.
     *
     * @param jre the image it is made from
     * @param folder for jars that are made of folders of classes
     */
    static ImageFromDockerfile of(String jre, Path folder) {
        var image = new ImageFromDockerfile("ebbwatch-service-test", true)
                .withFileFromPath("Dockerfile", RECIPE)
                .withBuildArg("JRE", jre);
        List<Path> parts = Stream.of(System.getProperty("java.class.path").split(":"))
                .map(Path::of)
                .filter(part -> Files.exists(part) && !part.endsWith("test-classes"))
                .toList();
        for (int i = 0; i < parts.size(); i++) {
            Path part = parts.get(i);
            Path jar = Files.isDirectory(part) ? packed(part, folder.resolve("classes-" + i + ".jar")) : part;
            image.withFileFromPath("lib/" + jar.getFileName(), jar);
        }
        return image;
    }

    private static Path packed(Path classes, Path jar) {
        try (OutputStream file = Files.newOutputStream(jar);
                var out = new JarOutputStream(file);
                Stream<Path> all = Files.walk(classes)) {
            for (Path each : all.filter(path -> !path.equals(classes)).toList()) {
                boolean isFolder = Files.isDirectory(each);
                out.putNextEntry(new JarEntry(classes.relativize(each) + (isFolder ? "/" : "")));
                if (!isFolder) {
                    Files.copy(each, out);
                }
            }
            return jar;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

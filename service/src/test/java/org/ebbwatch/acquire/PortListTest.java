package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PortListTest {

    @TempDir
    Path directory;

    private PortEntry entry(Path path, String stablePath) {
        return new PortEntry(path.getFileName().toString(), "a board", path.toString(), stablePath);
    }

    @Test
    void a_port_is_listed_with_the_link_that_leads_to_it() throws IOException {
        Path one = Files.createFile(directory.resolve("ttyUSB0"));
        Path other = Files.createFile(directory.resolve("ttyUSB1"));
        Path links = Files.createDirectory(directory.resolve("by-id"));
        Path link = Files.createSymbolicLink(links.resolve("usb-a-board"), other);
        Files.createSymbolicLink(links.resolve("usb-gone"), directory.resolve("ttyUSB9"));
        assertThat(PortList.withStablePaths(List.of(entry(one, ""), entry(other, "")), links))
                .containsExactly(entry(one, ""), entry(other, link.toString()));
    }

    @Test
    void a_port_that_has_no_link_of_one_sort_keeps_the_one_of_another() throws IOException {
        Path named = Files.createFile(directory.resolve("ttyUSB0"));
        Path nameless = Files.createFile(directory.resolve("ttyUSB1"));
        Path places = Files.createDirectory(directory.resolve("by-path"));
        Path names = Files.createDirectory(directory.resolve("by-id"));
        Files.createSymbolicLink(places.resolve("usb-1"), named);
        Path place = Files.createSymbolicLink(places.resolve("usb-2"), nameless);
        Path name = Files.createSymbolicLink(names.resolve("usb-a-board"), named);
        List<PortEntry> found = PortList.withStablePaths(
                PortList.withStablePaths(List.of(entry(named, ""), entry(nameless, "")), places), names);
        assertThat(found).extracting(PortEntry::stablePath).containsExactly(name.toString(), place.toString());
    }

    @Test
    void without_links_the_list_stands_as_it_is() throws IOException {
        List<PortEntry> ports = List.of(entry(directory.resolve("COM3"), ""));
        assertThat(PortList.withStablePaths(ports, directory.resolve("by-id"))).isEqualTo(ports);
    }

    @Test
    void this_machines_ports_can_be_listed() throws IOException {
        assertThat(PortList.read()).allSatisfy(port -> assertThat(port.path()).isNotBlank());
    }
}

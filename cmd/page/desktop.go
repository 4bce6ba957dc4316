package main

import (
	"os"
	"os/exec"
	"runtime"
)

// hasDesktop tells whether opening a page can mean anything here.
func hasDesktop() bool {
	switch runtime.GOOS {
	case "windows", "darwin":
		return os.Getenv("CI") == ""
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}

// openFile hands the file to whatever the desktop opens HTML with.
func openFile(path string) error {
	switch runtime.GOOS {
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", path).Start()
	case "darwin":
		return exec.Command("open", path).Start()
	}
	return exec.Command("xdg-open", path).Start()
}

package main

func main() { window() }

namespace Throwright.Cli.Commands;
internal static class PlotCommand { public static System.CommandLine.Command Make() => new("plot", "x"); }

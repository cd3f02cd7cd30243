using System.CommandLine;
using Throwright.Files;

namespace Throwright.Cli.Commands;

/// <summary>throwright schema: the JSON Schema of the aircraft file, for an editor.</summary>
internal static class SchemaCommand
{
    public static Command Make()
    {
        var command = new Command("schema", "Print the JSON Schema of the aircraft file.");
        command.SetAction(_ =>
        {
            Console.Out.Write(AircraftFile.Schema());
            return ExitCode.Clear;
        });
        return command;
    }
}

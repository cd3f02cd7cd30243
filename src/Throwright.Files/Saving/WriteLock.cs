using System.Globalization;
using System.Text;

namespace Throwright.Files.Saving;

/// <summary>Keeps a second program from writing the same file at the same time.</summary>
/// <remarks>
/// The lock is not that the lock file exists, but that it is open: the operating system closes it when a program dies,
/// so a lock file left by a dead program holds nobody up. On disks over a network that know no locks, the stamp of the
/// file is the only guard.
/// </remarks>
internal sealed class WriteLock : IDisposable
{
    private readonly FileStream stream;
    private readonly string path;

    private WriteLock(FileStream stream, string path) => (this.stream, this.path) = (stream, path);

    /// <summary>Waits as long as <paramref name="patience"/>; null: another program still holds it.</summary>
    public static WriteLock? Take(string path, TimeSpan patience)
    {
        var until = Environment.TickCount64 + (long)patience.TotalMilliseconds;
        while (true)
        {
            if (TryTake(path) is { } taken)
                return taken;
            if (Environment.TickCount64 >= until)
                return null;
            Thread.Sleep(20);
        }
    }

    public void Dispose()
    {
        // Still locked while it is removed, so nobody can take a file that is about to go.
        try
        {
            if (!OperatingSystem.IsWindows())
                File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It stays behind, closed, and holds nobody up.
        }

        stream.Dispose();
    }

    private static WriteLock? TryTake(string path)
    {
        FileStream stream;
        try
        {
            // Windows removes it by itself, also when the program dies.
            stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None);
        }
        catch (IOException e) when (e is not (DirectoryNotFoundException or FileNotFoundException or PathTooLongException))
        {
            return null;
        }

        if (IsStillThere(stream, path))
        {
            stream.SetLength(0);
            stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Environment.ProcessId}\n")));
            stream.Flush();
            return new(stream, path);
        }

        stream.Dispose();
        return null;
    }

    /// <summary>
    /// Between opening and locking, the holder before may have removed the file; then another program may hold a new
    /// one of the same name. Only if both are one file does a time set through the one show through the other.
    /// </summary>
    private static bool IsStillThere(FileStream stream, string path)
    {
        if (OperatingSystem.IsWindows())
            return true;
        var mark = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddSeconds(Random.Shared.Next()).AddTicks(Random.Shared.Next(10_000_000));
        File.SetLastWriteTimeUtc(stream.SafeFileHandle, mark);
        return File.GetLastWriteTimeUtc(path) == File.GetLastWriteTimeUtc(stream.SafeFileHandle);
    }
}

@echo off
rem Runs Ebblight on Windows. Builds it first when it was never built or a source is newer than the build.
setlocal
set "HERE=%~dp0"
set "STAMP=%HERE%.build-stamp"
set "JAR=%HERE%app\target\ebblight-app-0.1.0-SNAPSHOT.jar"
where java >nul 2>nul || (echo ebblight: java was not found. Install a JDK 17. 1>&2 & exit /b 3)
set "STALE="
if not exist "%STAMP%" set "STALE=1"
if not exist "%JAR%" set "STALE=1"
if not defined STALE for /f %%i in ('powershell -NoProfile -Command "$s=(Get-Item '%STAMP%').LastWriteTime; $n=Get-ChildItem -Recurse -File '%HERE%core\src\main','%HERE%engine\src\main','%HERE%imaging\src\main','%HERE%demo\src\main','%HERE%pocket\src\main','%HERE%app\src\main' | Where-Object {$_.LastWriteTime -gt $s} | Select-Object -First 1; if ($n) {1}"') do set "STALE=%%i"
if defined STALE (
  where mvn >nul 2>nul || (echo ebblight: mvn was not found. Install Maven 3.8.7 or newer. 1>&2 & exit /b 3)
  echo ebblight: building ^(the first time fetches libraries and takes a few minutes^) 1>&2
  pushd "%HERE%"
  call mvn -q -B -Pquick -pl app -am package 1>&2 || (popd & exit /b 1)
  popd
  type nul > "%STAMP%"
)
if not defined OPENCV_LOG_LEVEL set "OPENCV_LOG_LEVEL=OFF"
java -XX:+UseParallelGC -cp "%JAR%;%HERE%app\target\lib\*" ebblight.app.Main %*
exit /b %ERRORLEVEL%

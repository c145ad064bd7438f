@echo off
rem Makes an installer for Windows that needs neither a JDK nor Maven: tools\package.cmd [FOLDER]
rem Needs a JDK 17, Maven 3.8.7 or newer and the WiX toolset 3 (jpackage builds the .msi with it). Written for Windows and
rem not yet run there; tools/package says the same for Linux and macOS.
setlocal
set "HERE=%~dp0.."
set "TO=%~1"
if "%TO%"=="" set "TO=%HERE%\target\package"
for %%t in (mvn jlink jpackage) do (where %%t >nul 2>nul || (echo package: %%t was not found. Install a JDK 17 and Maven. 1>&2 & exit /b 3))
set "WORK=%TEMP%\ebblight-package"
if exist "%WORK%" rmdir /s /q "%WORK%"
mkdir "%WORK%\lib"
set /p MODULES=<"%HERE%\packaging\modules"
pushd "%HERE%"
call mvn -q -B -Pquick -pl app -am package || (popd & exit /b 1)
copy /y app\target\lib\*.jar "%WORK%\lib" >nul
copy /y app\target\ebblight-app-0.1.0-SNAPSHOT.jar "%WORK%\lib" >nul
jlink --add-modules %MODULES% --strip-debug --no-header-files --no-man-pages --compress=2 --output "%WORK%\runtime" || (popd & exit /b 1)
jpackage --type msi --name Ebblight --app-version 0.1.0 --input "%WORK%\lib" --main-jar ebblight-app-0.1.0-SNAPSHOT.jar --main-class ebblight.app.Main --runtime-image "%WORK%\runtime" --win-console --win-menu --win-per-user-install --license-file LICENSE --java-options -XX:+UseParallelGC --dest "%TO%" || (popd & exit /b 1)
popd
rmdir /s /q "%WORK%"

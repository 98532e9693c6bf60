# What is installed where, and the Debian package made of it (scripts/deb, or cpack in build/release).
include(GNUInstallDirs)

set(id org.loopwright.workbench)
set(desktop "${CMAKE_SOURCE_DIR}/ui/desktop")

if(TARGET loopwright-cli)
  install(TARGETS loopwright-cli RUNTIME)
  install(FILES "${CMAKE_BINARY_DIR}/generated/loopwright-cli.1.gz" DESTINATION "${CMAKE_INSTALL_MANDIR}/man1")
  install(FILES "${CMAKE_BINARY_DIR}/generated/loopwright-cli.bash"
          DESTINATION "${CMAKE_INSTALL_DATADIR}/bash-completion/completions" RENAME loopwright-cli)
endif()
if(TARGET loopwright)
  install(TARGETS loopwright RUNTIME)
  install(FILES "${desktop}/${id}.desktop" DESTINATION "${CMAKE_INSTALL_DATADIR}/applications")
  install(FILES "${desktop}/${id}.metainfo.xml" DESTINATION "${CMAKE_INSTALL_DATADIR}/metainfo")
  install(FILES "${desktop}/${id}.mime.xml" DESTINATION "${CMAKE_INSTALL_DATADIR}/mime/packages" RENAME ${id}.xml)
  install(FILES "${desktop}/${id}.svg" DESTINATION "${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps")
endif()
install(DIRECTORY designs/ DESTINATION "${CMAKE_INSTALL_DATADIR}/loopwright/designs")
install(FILES README.md LICENSE DESTINATION "${CMAKE_INSTALL_DOCDIR}")
foreach(folder IN ITEMS guide theory validation reference images)
  if(EXISTS "${CMAKE_SOURCE_DIR}/docs/${folder}")
    install(DIRECTORY docs/${folder} DESTINATION "${CMAKE_INSTALL_DOCDIR}")
  endif()
endforeach()

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME loopwright)
set(CPACK_PACKAGE_VENDOR "The Loopwright contributors")
set(CPACK_PACKAGE_CONTACT "The Loopwright contributors <loopwright@example.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION hamradio)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Not linked, so not found by shlibdeps: SVG icons, the font that makes pages equal everywhere, Qt's own dialog texts.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libqt6svg6, fonts-dejavu-core, qt6-translations-l10n")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
    "Design, judge and tune a small transmitting (magnetic) loop antenna: on which
 bands it resonates with a given capacitor, what it radiates, how narrow it is and
 how many volts stand across the capacitor, in a table, in charts and on paper.
 Comes with a desktop workbench (loopwright) and a command (loopwright-cli).")
include(CPack)
